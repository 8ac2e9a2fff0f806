package polewright.mount.pointing;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import polewright.mount.rig.MountKind;
import polewright.sky.angle.Angle;

/** With many centrings, only those ranked first by a linear estimate are left out and refitted. */
class ManyCentringsTest {
    private static final Angle SIGMA = Angle.ofArcminutes(1);
    private static final int STARS = 20;

    /** The estimate assumes a linear model; an outlier of half a degree changes it by less than one part in fifty. */
    @Test
    void estimatedMisfitReduction_agreesWithARefit() {
        for (int seed = 0; seed < 10; seed++) {
            PointingModel all = model(SimulatedRig.anywhere(0.5, new Random(seed)), 3);
            List<Integer> byEstimate = new ArrayList<>();
            List<Integer> byRefit = new ArrayList<>();
            double[] falls = all.misfitReductions();
            double[] refitted = new double[STARS];
            for (int i = 0; i < STARS; i++) {
                List<Centring> others = new ArrayList<>(all.centrings());
                others.remove(i);
                refitted[i] = all.misfit()
                        - PointingFit.model(all.possible(), all.site(), others).misfit();
                assertThat(falls[i]).isCloseTo(refitted[i], Offset.offset(0.1 + 0.02 * refitted[i]));
                byEstimate.add(i);
                byRefit.add(i);
            }
            byEstimate.sort(Comparator.comparingDouble(i -> -falls[i]));
            byRefit.sort(Comparator.comparingDouble(i -> -refitted[i]));
            assertThat(byEstimate.get(0)).isEqualTo(byRefit.get(0));
        }
    }

    private static PointingModel model(SimulatedRig rig, int wrong) {
        List<Centring> centrings = new ArrayList<>();
        IntStream.range(0, STARS).forEach(i -> {
            Centring good = rig.centring(rig.place(), SIGMA);
            MountReading reading = i >= wrong
                    ? good.reading()
                    : new MountReading(
                            good.reading().hourAngle(),
                            good.reading().declination().plus(Angle.ofArcminutes(10.0 * (i + 1))));
            centrings.add(new Centring(good.star(), good.seen(), reading, good.sigma()));
        });
        return PointingFit.model(PointingTerm.of(MountKind.FORK_ON_WEDGE), rig.site(), centrings);
    }
}
