package polewright.launcher.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.lang.ArchRule;
import org.junit.jupiter.api.Test;
import polewright.operations.input.NumberInput;

/** A number that a person typed is read in one place: Java's own parser takes {@code 0x1p3}, {@code 5d} and NaN too. */
class TypedNumbersTest {
    private static final ArchRule ONE_READER = noClasses()
            .that()
            .resideInAnyPackage(ProductionClasses.APPLICATION)
            .and()
            .doNotHaveFullyQualifiedName(NumberInput.class.getName())
            .should()
            .callMethod(Double.class, "parseDouble", String.class)
            .orShould()
            .callMethod(Double.class, "valueOf", String.class)
            .orShould()
            .callMethod(Float.class, "parseFloat", String.class);

    @Test
    void typedNumbers_areParsedInOneClass() {
        ONE_READER.check(ProductionClasses.CLASSES);
    }

    @Test
    void otherParser_isCaught() {
        assertThat(ONE_READER.evaluate(ProductionClasses.only(Lenient.class)).hasViolation())
                .isTrue();
    }

    private static final class Lenient {
        @SuppressWarnings("UnusedMethod")
        static double read(String typed) {
            return Double.parseDouble(typed);
        }
    }
}
