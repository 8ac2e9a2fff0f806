package polewright.launcher.architecture;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.lang.ArchRule;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.mount.rig.MountKind;
import polewright.sky.broken.RuleBreakers;

/** Data flows one way, from {@code sky} to {@code launcher}: each module knows only those before it. */
class ModulesTest {
    /**
     * Each module with all that it may know. Pixels know nothing of mounts, and mounts nothing of pixels: an attitude is
     * all that passes between them. The terminal and the pages do not know each other.
     */
    @ParameterizedTest
    @CsvSource({
        "sky,",
        "image, sky",
        "mount, sky",
        "alignment, sky mount",
        "drawing, sky mount alignment",
        "session, sky mount alignment",
        "store, sky session",
        "planning, sky mount alignment drawing session",
        "simulation, sky image mount alignment drawing session",
        "operations, sky image mount alignment drawing session store planning simulation",
        "report, sky image mount alignment drawing session planning simulation operations",
        "cli, sky image mount alignment drawing session store planning simulation operations report",
        "web, sky image mount alignment drawing session store planning simulation operations report",
        "launcher, operations cli web",
    })
    void eachModuleKnowsOnlyThoseBeforeIt(String module, String known) {
        assertThat(ProductionClasses.CLASSES.that(resideInAPackage("polewright." + module + "..")))
                .as(module)
                .isNotEmpty();
        onlyKnows(module, known).check(ProductionClasses.CLASSES);
    }

    @Test
    void skyThatKnowsMounts_isCaught() {
        var broken = ProductionClasses.only(RuleBreakers.SkyThatKnowsMounts.class, MountKind.class);
        assertThat(onlyKnows("sky", null).evaluate(broken).hasViolation()).isTrue();
    }

    @Test
    void packagesDoNotDependOnEachOtherInCycles() {
        slices().matching("polewright.(**)").should().beFreeOfCycles().check(ProductionClasses.CLASSES);
    }

    private static ArchRule onlyKnows(String module, String known) {
        List<String> names = known == null ? List.of() : List.of(known.split(" "));
        String[] allowed = Stream.concat(Stream.of(module), names.stream())
                .map(name -> "polewright." + name + "..")
                .toArray(String[]::new);
        DescribedPredicate<JavaClass> others =
                resideInAPackage("polewright..").and(DescribedPredicate.not(resideInAnyPackage(allowed)));
        return noClasses()
                .that()
                .resideInAPackage("polewright." + module + "..")
                .should()
                .dependOnClassesThat(others);
    }
}
