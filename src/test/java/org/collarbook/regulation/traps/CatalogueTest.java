package org.collarbook.regulation.traps;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Every trap of both catalogues has its class, and every class its trap. */
class CatalogueTest {

    private static final List<JavaClass> TRAPS = new ClassFileImporter().importPackages(
            CatalogueTest.class.getPackageName()).stream().filter(type -> type.isAnnotatedWith(Trap.class)).toList();

    @ParameterizedTest
    @EnumSource
    void isComplete(Catalogue catalogue) {
        List<Integer> numbers = TRAPS.stream().map(type -> type.getAnnotationOfType(Trap.class))
                .filter(trap -> trap.of() == catalogue).map(Trap::number).toList();
        assertThat(numbers).containsExactlyInAnyOrderElementsOf(
                IntStream.rangeClosed(1, catalogue.traps).boxed().toList());
    }

    @Test
    void everyTrapIsTried() {
        assertThat(TRAPS).hasSize(18 + 16).allSatisfy(type -> {
            assertThat(type.getSimpleName()).endsWith("Test");
            assertThat(type.getMethods()).as(type.getSimpleName()).anyMatch(
                    method -> method.isAnnotatedWith(Test.class) || method.isAnnotatedWith(ParameterizedTest.class));
        });
    }
}
