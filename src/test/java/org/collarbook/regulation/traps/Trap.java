package org.collarbook.regulation.traps;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** Which trap of which catalogue a test class is about. */
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
@interface Trap {

    Catalogue of();

    int number();
}
