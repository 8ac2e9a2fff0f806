package polewright.mount.pointing;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import org.junit.jupiter.api.Test;
import polewright.mount.rig.MountKind;
import polewright.sky.place.Site;

/**
 * The outliers and likely mistakes found on randomly generated nights, as recorded before the check was optimised, when
 * every fit ran to convergence from scratch and every moment was computed exactly.
 */
class RecordedAnswersTest {
    private static final List<Site> SITES =
            List.of(Site.ofDegrees(54.60, -2.90, 240), Site.ofDegrees(-43.95, 170.40, 710));
    private static final int NIGHTS = 120;
    /** Neighbouring seeds start with similar random numbers. */
    private static final long SPREAD = 0x9E3779B97F4A7C15L;

    @Test
    void doubtsAndMistakes_areAsRecorded() throws IOException {
        assertThat(answers()).isEqualTo(recorded());
    }

    /** One line per night; the recorded file is this list. */
    static List<String> answers() {
        List<String> answers = new ArrayList<>();
        for (int seed = 0; seed < NIGHTS; seed++) {
            Random random = new Random(seed * SPREAD);
            Site site = SITES.get(seed % 2);
            int count = 2 + random.nextInt(seed % 10 == 0 ? 20 : 8);
            DrawnCentrings drawn = new DrawnCentrings(site, random);
            List<CentredStar> stars = switch (seed % 5) {
                case 0 -> drawn.mistaken(count, count / 2);
                case 1 -> drawn.honest(count);
                case 2 -> drawn.allAnHourLate(count);
                default -> drawn.mistaken(count, 1);
            };
            MountKind kind = seed % 4 == 3 ? MountKind.GERMAN : MountKind.FORK_ON_WEDGE;
            answers.add(seed + ": " + count + " stars, "
                    + answer(CentringCheck.of(kind, site, DrawnCentrings.WEATHER, stars, DrawnCentrings.STARS)));
        }
        return answers;
    }

    private static String answer(CheckedCentrings checked) {
        List<String> doubts =
                checked.doubts().stream().map(RecordedAnswersTest::answer).toList();
        return checked.believed().size() + " believed" + (doubts.isEmpty() ? "" : "; " + String.join("; ", doubts));
    }

    private static String answer(CentringDoubt doubt) {
        if (doubt instanceof CentringDoubt.NotUp down) {
            return "not up " + down.indexes() + shared(down.mistakes());
        } else if (doubt instanceof CentringDoubt.OneWrong wrong) {
            return "wrong [" + wrong.index() + "]" + causes(wrong.mistakes());
        } else if (doubt instanceof CentringDoubt.OneOf suspects) {
            return "one of " + suspects.indexes() + causes(suspects.mistakes());
        } else if (doubt instanceof CentringDoubt.AllMistaken all) {
            return "all" + shared(all.mistakes());
        }
        return "zero off by " + ((CentringDoubt.ZeroByHours) doubt).hours() + " h";
    }

    private static String shared(List<SharedMistake> mistakes) {
        return " " + mistakes.stream().map(SharedMistake::cause).toList();
    }

    private static String causes(List<CentringMistake> mistakes) {
        return " " + mistakes.stream().map(m -> m.index() + " " + m.cause()).toList();
    }

    private static List<String> recorded() throws IOException {
        try (var file = Objects.requireNonNull(
                RecordedAnswersTest.class.getResourceAsStream("recorded-answers.txt"), "recorded-answers.txt")) {
            return new String(file.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .toList();
        }
    }

    /** With nothing but contradictions, every star in turn is left out and the rest refitted. */
    @Test
    void fiftyContradictingCentrings_allocateUnderAHundredMegabytes() {
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        Site site = SITES.get(0);
        long allocated = Long.MAX_VALUE;
        for (int night = 0; night < 2; night++) {
            List<CentredStar> stars = new DrawnCentrings(site, new Random(3 + night)).contradicting(50);
            long before = threads.getCurrentThreadAllocatedBytes();
            CheckedCentrings checked = CentringCheck.of(
                    MountKind.FORK_ON_WEDGE, site, DrawnCentrings.WEATHER, stars, DrawnCentrings.STARS);
            allocated = threads.getCurrentThreadAllocatedBytes() - before;
            assertThat(checked.doubts()).hasSizeGreaterThan(20);
        }
        assertThat(allocated).isLessThan(100_000_000);
    }
}
