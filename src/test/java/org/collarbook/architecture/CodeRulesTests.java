package org.collarbook.architecture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Map;
import java.util.stream.Stream;

import canaries.Canaries;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import org.collarbook.portal.canary.UnscopedFinder;
import org.collarbook.regulation.canary.ImpureDecision;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class CodeRulesTests {

    private static final JavaClasses PRODUCT = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS).importPackages("org.collarbook");

    /** For each rule a class that breaks it: a rule that no longer bites fails here. */
    private static final Map<ArchRule, Class<?>> CANARIES = Map.of(CodeRules.REGULATION_IS_PURE, ImpureDecision.class,
            CodeRules.PORTAL_READS_ARE_SCOPED, UnscopedFinder.class,
            CodeRules.TIME_COMES_FROM_THE_CLOCK, Canaries.ReadsTheSystemClock.class, CodeRules.ENTITIES_STAY_AT_HOME,
            Canaries.PublicEntity.class, CodeRules.CONTROLLERS_STAY_AT_HOME, Canaries.PublicController.class,
            CodeRules.NO_BINARY_FRACTIONS_IN_DECISIONS, ImpureDecision.class, CodeRules.INJECTION_BY_CONSTRUCTOR,
            Canaries.FieldInjection.class, CodeRules.STATE_IS_PRIVATE, Canaries.OpenField.class);

    static Stream<ArchRule> rules() {
        return CodeRules.ALL.stream();
    }

    @ParameterizedTest
    @MethodSource("rules")
    void theProductKeeps(ArchRule rule) {
        rule.check(PRODUCT);
    }

    @ParameterizedTest
    @MethodSource("rules")
    void theCanaryBreaks(ArchRule rule) {
        var canary = CANARIES.get(rule);
        assertThat(canary).as("a canary for: %s", rule.getDescription()).isNotNull();
        assertThatThrownBy(() -> rule.check(new ClassFileImporter().importClasses(canary)))
                .isInstanceOf(AssertionError.class);
    }

    @Test
    void everyRuleHasACanary() {
        assertThat(CANARIES.keySet()).containsExactlyInAnyOrderElementsOf(CodeRules.ALL);
    }
}
