package polewright.launcher.architecture;

import static com.tngtech.archunit.core.domain.JavaAccess.Predicates.target;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.assignableTo;
import static com.tngtech.archunit.core.domain.properties.HasName.Predicates.nameMatching;
import static com.tngtech.archunit.core.domain.properties.HasOwner.Predicates.With.owner;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.tngtech.archunit.lang.ArchRule;
import java.io.PrintWriter;
import java.io.Writer;
import org.junit.jupiter.api.Test;
import polewright.operations.Workbench;

/** The pages call operations directly: they run no command line, and read no text back that was meant for a terminal. */
class DirectPagesTest {
    private static final ArchRule NO_TERMINAL = noClasses()
            .that()
            .resideInAPackage("polewright.web..")
            .or()
            .haveFullyQualifiedName(Captured.class.getName())
            .should()
            .callConstructorWhere(target(owner(assignableTo(Workbench.class))))
            .orShould()
            .callMethodWhere(target(owner(assignableTo(Workbench.class))).and(target(nameMatching("out|err"))))
            .orShould()
            .dependOnClassesThat()
            .resideInAnyPackage("polewright.cli..", "polewright.launcher..", "picocli..");

    /** Captures what a command prints. */
    static final class Captured {
        private Captured() {}

        static Workbench of(Workbench bench) {
            return new Workbench(
                    bench.clock(),
                    bench.environment(),
                    new PrintWriter(Writer.nullWriter()),
                    bench.err(),
                    false,
                    bench.pause());
        }
    }

    @Test
    void pages_useNoTerminal() {
        NO_TERMINAL.check(ProductionClasses.CLASSES);
    }

    @Test
    void capturedOutput_isFound() {
        assertThatThrownBy(() -> NO_TERMINAL.check(ProductionClasses.only(Captured.class)))
                .isInstanceOf(AssertionError.class);
    }
}
