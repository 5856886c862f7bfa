package org.collarbook.testing;

import java.lang.annotation.ElementType;
import java.lang.annotation.Inherited;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

import org.junit.jupiter.api.extension.ExtendWith;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.context.annotation.Import;
import org.springframework.test.context.ContextConfiguration;
import org.springframework.test.context.TestConstructor;

/**
 * The whole service on its real PostgreSQL, started once for all tests of the JVM that need nothing else. Test classes
 * take {@link Api}, {@link Given}, {@link Tables} and {@link TestClock} in their constructors. The clock stands at
 * {@link TestClock#TODAY} before each test; rows of earlier tests stay, so tests use serials of their own
 * ({@link Given#serial}).
 */
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
@Inherited
@SpringBootTest(webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT)
@ContextConfiguration(initializers = TestDatabase.class)
@Import({TestClock.Configuration.class, Api.class, Given.class, Tables.class})
@TestConstructor(autowireMode = TestConstructor.AutowireMode.ALL)
@ExtendWith(TestClock.Reset.class)
public @interface RegisterTest {
}
