package org.collarbook.architecture;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.properties.CanBeAnnotated.Predicates.annotatedWith;
import static com.tngtech.archunit.lang.conditions.ArchConditions.callMethodWhere;
import static com.tngtech.archunit.lang.conditions.ArchConditions.have;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.methods;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noFields;

import java.time.Clock;
import java.util.List;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaMethod;
import com.tngtech.archunit.core.domain.JavaMethodCall;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.lang.ArchRule;
import jakarta.persistence.Entity;
import org.collarbook.access.Caller;
import org.collarbook.access.CustomerScope;
import org.collarbook.compliance.KnownContainers;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.web.bind.annotation.RestController;

/** The rules that the compiler does not know; each has a canary in {@link CodeRulesTests} that breaks it. */
final class CodeRules {

    static final ArchRule REGULATION_IS_PURE = noClasses().that(resideInAPackage("org.collarbook.regulation.."))
            .should().dependOnClassesThat(resideInAPackage("org.springframework..")
                    .and(DescribedPredicate.not(resideInAPackage("org.springframework.modulith..")))
                    .or(resideInAPackage("java.sql..")).or(resideInAPackage("jakarta.."))
                    .or(resideInAPackage("tools.jackson..")).or(resideInAPackage("com.fasterxml.."))
                    .or(resideInAPackage("org.slf4j..")))
            .orShould().dependOnClassesThat().areAssignableTo(Clock.class)
            .because("a decision is a function of facts, day and rule book");

    static final ArchRule TIME_COMES_FROM_THE_CLOCK = noClasses().should(callMethodWhere(readsTheSystemClock()))
            .because("tests must be able to set the day, so the Clock is injected");

    static final ArchRule ENTITIES_STAY_AT_HOME = classes().that(annotatedWith(Entity.class)).should()
            .notBePublic().because("an entity that leaves its module is its schema leaving it").allowEmptyShould(true);

    static final ArchRule CONTROLLERS_STAY_AT_HOME = classes().that(annotatedWith(RestController.class)).should()
            .notBePublic().because("HTTP is the way in, not another class's");

    static final ArchRule NO_BINARY_FRACTIONS_IN_DECISIONS = noFields().that().areDeclaredInClassesThat()
            .resideInAnyPackage("org.collarbook.regulation..", "org.collarbook.registry..").should()
            .haveRawType(double.class).orShould().haveRawType(float.class)
            .because("weights and capacities are exact decimals");

    static final ArchRule INJECTION_BY_CONSTRUCTOR = noFields().should().beAnnotatedWith(Autowired.class)
            .because("a constructor shows what a class needs").allowEmptyShould(true);

    static final ArchRule STATE_IS_PRIVATE = fields().that().areNotFinal().and()
            // the evaluator keeps its working values for the length of one call
            .areDeclaredInClassesThat().resideOutsideOfPackage("org.collarbook.regulation.engine").should().bePrivate()
            .orShould()
            .haveModifier(JavaModifier.SYNTHETIC).because("state that changes is guarded by its own class");

    static final ArchRule PORTAL_READS_ARE_SCOPED = methods().that().areDeclaredInClassesThat(
            answersAPortal().and(readsTheDatabase())).and().areNotPrivate()
            .should(have(parameterOfScope())).because("a finder without a scope finds everybody's");

    static final List<ArchRule> ALL = List.of(REGULATION_IS_PURE, TIME_COMES_FROM_THE_CLOCK, ENTITIES_STAY_AT_HOME,
            CONTROLLERS_STAY_AT_HOME, NO_BINARY_FRACTIONS_IN_DECISIONS, INJECTION_BY_CONSTRUCTOR, STATE_IS_PRIVATE,
            PORTAL_READS_ARE_SCOPED);

    private CodeRules() {}

    private static DescribedPredicate<JavaMethodCall> readsTheSystemClock() {
        return DescribedPredicate.describe("now() without a clock",
                call -> call.getTarget().getOwner().getPackageName().equals("java.time")
                        && call.getTarget().getName().equals("now")
                        && call.getTarget().getRawParameterTypes().isEmpty());
    }

    /** In {@code notices} much is done for nobody who asks: there, what a controller calls. */
    private static DescribedPredicate<JavaClass> answersAPortal() {
        return resideInAPackage("org.collarbook.portal")
                .or(resideInAPackage("org.collarbook.portal.notices")
                        .and(DescribedPredicate.describe("answer a request",
                                type -> type.getDirectDependenciesToSelf().stream().anyMatch(
                                        use -> use.getOriginClass().isAnnotatedWith(RestController.class)))));
    }

    private static DescribedPredicate<JavaClass> readsTheDatabase() {
        return DescribedPredicate.describe("read the database",
                type -> type.getAllFields().stream()
                        .anyMatch(field -> field.getRawType().isEquivalentTo(JdbcClient.class)
                                || field.getRawType().isEquivalentTo(KnownContainers.class)));
    }

    private static DescribedPredicate<JavaMethod> parameterOfScope() {
        return DescribedPredicate.describe("a CustomerScope or a Caller among the parameters", method -> method
                .getRawParameterTypes().stream().anyMatch(
                        type -> type.isEquivalentTo(CustomerScope.class) || type.isEquivalentTo(Caller.class)));
    }
}
