package polewright.alignment.fix;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Regression test against earlier results: nights with many mistakes are judged as they were when every suspicion was
 * still evaluated in full from the start, one sighting at a time. {@code quarrelsome-nights.txt} was written by {@link
 * #main} at that commit.
 */
@Tag("slow")
class SameOutcomeTest {
    private static final int NIGHTS = 600;
    // 0.02″, a thousandth of any sighting's sigma: two iterations that converge to the same axis stop slightly apart.
    private static final double REST_RAD = 1e-7;

    public static void main(String[] args) {
        LongStream.rangeClosed(1, NIGHTS).mapToObj(SameOutcomeTest::line).forEach(System.out::println);
    }

    /** Seed; offset in radians; sum of the agreements' χ²; what was set aside and why; outcome. */
    private static String line(long seed) {
        Fix fix = QuarrelsomeNight.fix(seed);
        return String.format(
                Locale.ROOT,
                "%d|%.12f|%.12f|%.9e|%s",
                seed,
                fix.state().offset().east().radians(),
                fix.state().offset().up().radians(),
                fix.agreements().stream()
                        .mapToDouble(Agreement::squaredInnovation)
                        .sum(),
                outcome(fix));
    }

    private static String outcome(Fix fix) {
        String setAside = fix.agreements().stream()
                .filter(Agreement::contradictory)
                .map(a -> "#" + a.seq() + " " + a.likelyCause().orElse("no cause"))
                .collect(Collectors.joining(", "));
        return setAside + "|" + fix.getClass().getSimpleName() + "|" + words(fix);
    }

    private static String words(Fix fix) {
        if (fix instanceof Fix.Dubious dubious) {
            return dubious.reason();
        }
        return fix instanceof Fix.Underdetermined underdetermined ? underdetermined.missing() : "";
    }

    @Test
    void nightsFullOfMistakes_areJudgedAsBefore() throws IOException {
        List<String> golden = golden();
        assertThat(golden).hasSize(NIGHTS);
        for (String line : golden) {
            String[] parts = line.split("\\|", 5);
            Fix fix = QuarrelsomeNight.fix(Long.parseLong(parts[0]));
            String night = "night " + parts[0];
            assertThat(outcome(fix)).as(night).isEqualTo(parts[4]);
            assertThat(fix.state().offset().east().radians())
                    .as(night)
                    .isCloseTo(Double.parseDouble(parts[1]), within(REST_RAD));
            assertThat(fix.state().offset().up().radians())
                    .as(night)
                    .isCloseTo(Double.parseDouble(parts[2]), within(REST_RAD));
        }
    }

    private static List<String> golden() throws IOException {
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(
                Objects.requireNonNull(SameOutcomeTest.class.getResourceAsStream("quarrelsome-nights.txt")),
                StandardCharsets.UTF_8))) {
            return reader.lines().toList();
        }
    }
}
