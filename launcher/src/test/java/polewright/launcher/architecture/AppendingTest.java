package polewright.launcher.architecture;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaAccess.Predicates.target;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.assignableTo;
import static com.tngtech.archunit.core.domain.properties.HasName.Predicates.name;
import static com.tngtech.archunit.core.domain.properties.HasName.Predicates.nameMatching;
import static com.tngtech.archunit.core.domain.properties.HasOwner.Predicates.With.owner;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.lang.ArchRule;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import polewright.operations.LogEntry;
import polewright.session.NightId;
import polewright.session.NightState;
import polewright.session.event.NightEvent;
import polewright.store.NightLog;

/** Events reach the log one way, and commands and pages share it, so that all honour submission key and known state. */
class AppendingTest {
    // Whatever else the log learns to do counts as adding, until it is named here.
    private static final String READING = "open|close|damage|event|events|keepCopy|latest|nights|submitted|version";

    private static final ArchRule ONE_WAY_IN = noClasses()
            .that()
            .resideInAnyPackage(ProductionClasses.APPLICATION)
            .and()
            .doNotHaveFullyQualifiedName(LogEntry.class.getName())
            .should()
            .callMethodWhere(target(owner(assignableTo(NightLog.class))).and(target(not(nameMatching(READING)))));

    // Besides the common way of commands and pages: a night's beginning, whole nights, and two that log without being
    // commands.
    private static final ArchRule ONE_KIND_OF_COMMAND = noClasses()
            .that()
            .haveNameNotMatching(".*\\.(NightEntry|BeginNight|DemoCommand|NightsFile|WatchLog|PracticeNight)")
            .and()
            .doNotHaveFullyQualifiedName(LogEntry.class.getName())
            .should()
            .callMethodWhere(target(owner(assignableTo(LogEntry.class))).and(target(not(name("latestNight")))));

    /** Bypasses both. */
    static final class Bypass {
        private Bypass() {}

        static void append(NightLog log, NightId night, NightEvent event, Instant at) {
            log.append(night, event, at);
            LogEntry.append(log, night, event, at, new NightState.ModelCache());
            LogEntry.importNights(log, List.of(), false, Optional.empty());
        }
    }

    @Test
    void onlyLogEntry_appendsToTheLog() {
        ONE_WAY_IN.check(ProductionClasses.CLASSES);
    }

    @Test
    void onlyNightEntry_addsEvents() {
        ONE_KIND_OF_COMMAND.check(ProductionClasses.CLASSES);
    }

    @Test
    void bypass_isCaught() {
        assertThat(ONE_WAY_IN.evaluate(ProductionClasses.only(Bypass.class)).hasViolation())
                .isTrue();
        assertThat(ONE_KIND_OF_COMMAND
                        .evaluate(ProductionClasses.only(Bypass.class))
                        .hasViolation())
                .isTrue();
    }
}
