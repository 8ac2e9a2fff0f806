package polewright.launcher.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.InstanceofCheck;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import java.util.Arrays;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import polewright.session.event.NightEvent;
import polewright.sky.broken.RuleBreakers;

/**
 * Java 17 has no exhaustive switch over a sealed type, and a chain of {@code instanceof} compiles when a kind is missing.
 * What every kind must answer is therefore an abstract method on the type, or a visitor with a method for each kind.
 */
class SealedTypesTest {
    /**
     * The number may only fall: a new {@code instanceof} over one of our sealed types has to replace another. Most of
     * those left ask one question about one kind ("is it a stop?").
     */
    private static final int MOST = 372;

    /** Reading and writing takes a type apart by its nature; {@code EveryKindIsCompleteTest} checks it for each kind. */
    private static final Set<String> CODECS = Set.of("polewright.session.jsonl", "polewright.sky.fields");

    @Test
    void sealedTypes_areSeldomTakenApartByInstanceof() {
        Map<String, Long> checks = checks(ProductionClasses.CLASSES);
        assertThat(checks.values().stream().mapToLong(Long::longValue).sum())
                .as("instanceof over sealed types, by class: %s", checks)
                .isLessThanOrEqualTo(MOST);
    }

    @Test
    void instanceofOverSealedType_isCounted() {
        assertThat(checks(ProductionClasses.only(RuleBreakers.TypeTaker.class)).values())
                .containsExactly(1L);
    }

    @Test
    void nestedKind_isOneOfItsSealedType() {
        assertThat(isSealed(NightEvent.Clamped.class)).isTrue();
        assertThat(isSealed(NightEvent.Measurement.class)).isTrue();
        assertThat(isSealed(String.class)).isFalse();
    }

    private static Map<String, Long> checks(JavaClasses classes) {
        return classes.stream()
                .filter(c -> !CODECS.contains(c.getPackageName()))
                .flatMap(c -> c.getInstanceofChecks().stream())
                .filter(check -> isSealed(check.getRawType()))
                .collect(Collectors.groupingBy(SealedTypesTest::outermost, TreeMap::new, Collectors.counting()));
    }

    private static String outermost(InstanceofCheck check) {
        String name = check.getOwner().getOwner().getName();
        return name.contains("$") ? name.substring(0, name.indexOf('$')) : name;
    }

    private static boolean isSealed(JavaClass type) {
        return type.getName().startsWith("polewright.") && isSealed(type.reflect());
    }

    /** Whether it is a sealed type of ours or one of its kinds. */
    private static boolean isSealed(Class<?> type) {
        return type.getName().startsWith("polewright.")
                && (type.isSealed()
                        || Stream.concat(Stream.ofNullable(type.getSuperclass()), Arrays.stream(type.getInterfaces()))
                                .anyMatch(SealedTypesTest::isSealed));
    }
}
