package org.collarbook.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Collectors;

import org.collarbook.Collarbook;
import org.junit.jupiter.api.Test;
import org.springframework.modulith.core.ApplicationModule;
import org.springframework.modulith.core.ApplicationModules;

class ModulesTests {

    private static final ApplicationModules MODULES = ApplicationModules.of(Collarbook.class);

    @Test
    void modulesUseEachOtherOnlyAsDeclaredAndWithoutCycles() {
        MODULES.verify();
    }

    @Test
    void everyPackageBelowTheRootIsAModule() throws Exception {
        try (var packages = Files.list(Path.of("src/main/java/org/collarbook"))) {
            var folders = packages.filter(Files::isDirectory).map(folder -> folder.getFileName().toString())
                    .collect(Collectors.toSet());
            assertThat(MODULES.stream().map(ApplicationModule::getIdentifier).map(Object::toString))
                    .containsExactlyInAnyOrderElementsOf(folders);
        }
    }
}
