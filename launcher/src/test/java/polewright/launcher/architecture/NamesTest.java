package polewright.launcher.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import org.jspecify.annotations.NullMarked;
import org.junit.jupiter.api.Test;
import polewright.sky.broken.RuleBreakers;
import polewright.sky.unmarked.OfUnknownNullness;

/** A class is named for what it is, and says what may be null. */
class NamesTest {
    private static final ArchRule NO_DRAWERS =
            noClasses().should().haveNameMatching(".*[.$](\\w*(Utils?|Helpers?|Managers?)|\\w*Common\\w*)");
    private static final ArchRule NO_DRAWER_PACKAGES =
            noClasses().should().resideInAnyPackage("..util..", "..utils..", "..common..", "..helper..", "..misc..");
    private static final ArchRule NULLNESS_IS_SAID = classes().should(liveInAPackageThatSaysWhatMayBeNull());

    @Test
    void noClassOrPackage_isACatchAll() {
        NO_DRAWERS.check(ProductionClasses.CLASSES);
        NO_DRAWER_PACKAGES.check(ProductionClasses.CLASSES);
    }

    @Test
    void catchAllClass_isCaught() {
        assertThat(NO_DRAWERS
                        .evaluate(ProductionClasses.only(RuleBreakers.AngleHelper.class))
                        .hasViolation())
                .isTrue();
    }

    @Test
    void everyPackage_declaresNullness() {
        NULLNESS_IS_SAID.check(ProductionClasses.CLASSES);
    }

    @Test
    void packageWithoutNullness_isCaught() {
        assertThat(NULLNESS_IS_SAID
                        .evaluate(ProductionClasses.only(OfUnknownNullness.class))
                        .hasViolation())
                .isTrue();
    }

    private static ArchCondition<JavaClass> liveInAPackageThatSaysWhatMayBeNull() {
        return new ArchCondition<>("live in a package that is @NullMarked") {
            @Override
            public void check(JavaClass item, ConditionEvents events) {
                boolean marked = item.getPackage().isAnnotatedWith(NullMarked.class);
                events.add(new SimpleConditionEvent(item, marked, item.getName() + (marked ? " is" : " is not")));
            }
        };
    }
}
