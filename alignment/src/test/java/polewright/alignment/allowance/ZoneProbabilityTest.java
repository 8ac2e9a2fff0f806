package polewright.alignment.allowance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.alignment.work.SkyRegion;
import polewright.alignment.work.VisualObservation;
import polewright.alignment.work.Work;
import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;
import polewright.sky.angle.Angle;

class ZoneProbabilityTest {
    private static final DiscAllowance FIVE_ARCMIN = new DiscAllowance(Angle.ofArcminutes(5));

    private static double probability(double east, double up, OffsetCovariance covariance) {
        return ZoneProbability.of(FIVE_ARCMIN, AxisOffset.ofArcminutes(east, up), covariance);
    }

    /** The Rayleigh distribution: P = 1 − exp(−r² / 2σ²). */
    @ParameterizedTest
    @CsvSource({"0.5", "1", "2", "3", "5", "10", "50", "500"})
    void centredAndRound_isTheRayleighDistribution(double sigma) {
        assertThat(probability(0, 0, new OffsetCovariance(sigma * sigma, 0, sigma * sigma)))
                .isCloseTo(1 - Math.exp(-25 / (2 * sigma * sigma)), within(1e-4));
    }

    /** An axis known in one direction alone: the normal distribution's well-known 68.27 % and 95.45 %. */
    @ParameterizedTest
    @CsvSource({"5, 0.6827", "2.5, 0.9545"})
    void uncertainInOneDirection_isTheNormalDistribution(double sigma, double expected) {
        OffsetCovariance east = new OffsetCovariance(sigma * sigma, 0, 1e-6);
        OffsetCovariance up = new OffsetCovariance(1e-6, 0, sigma * sigma);
        assertThat(probability(0, 0, east)).isCloseTo(expected, within(2e-4));
        assertThat(probability(0, 0, up)).isCloseTo(expected, within(2e-4));
    }

    @Test
    void farOutside_isZero_andExactlyKnownInside_isOne() {
        OffsetCovariance sharp = new OffsetCovariance(1e-4, 0, 1e-4);
        assertThat(probability(40, -30, new OffsetCovariance(9, 2, 4))).isLessThan(1e-9);
        assertThat(probability(4.9, 0, sharp)).isCloseTo(1, within(1e-4));
        assertThat(probability(0, -4.9, sharp)).isCloseTo(1, within(1e-4));
        assertThat(probability(3.4, 3.4, sharp)).isCloseTo(1, within(1e-4));
        assertThat(probability(5.1, 0, sharp)).isCloseTo(0, within(1e-4));
        assertThat(probability(0, 0, new OffsetCovariance(0, 0, 0))).isCloseTo(1, within(1e-4));
        assertThat(probability(6, 0, new OffsetCovariance(0, 0, 0))).isZero();
    }

    /** Compared with random draws; their own standard error is the tolerance. */
    @ParameterizedTest
    @CsvSource({
        "0, 0, 3, 1, 0",
        "2, 1, 3, 2, 0.7",
        "-4, 3, 6, 2, -0.9",
        "5, 5, 4, 4, 0.3",
        "1, -6, 1, 5, -0.5",
        "0, 0, 20, 2, 0.99",
        "3, 0, 0.5, 8, 0"
    })
    void disc_agreesWithRandomDraws(double east, double up, double sigmaEast, double sigmaUp, double correlation) {
        Random random = new Random(99);
        int draws = 200_000;
        int inside = 0;
        for (int i = 0; i < draws; i++) {
            double first = random.nextGaussian();
            double second = correlation * first + Math.sqrt(1 - correlation * correlation) * random.nextGaussian();
            double e = east + sigmaEast * first;
            double u = up + sigmaUp * second;
            inside += FIVE_ARCMIN.contains(AxisOffset.ofArcminutes(e, u)) ? 1 : 0;
        }
        double p = inside / (double) draws;
        double standardError = Math.sqrt(p * (1 - p) / draws);
        assertThat(probability(
                        east,
                        up,
                        new OffsetCovariance(
                                sigmaEast * sigmaEast, correlation * sigmaEast * sigmaUp, sigmaUp * sigmaUp)))
                .isCloseTo(p, within(4 * standardError + 1e-4));
    }

    /** A disc looks the same from every side, so rotating the whole fix about the pole changes nothing. */
    @Test
    void rotatingFixAndUncertaintyTogether_changesNothing() {
        double asItIs = probability(3, 0, new OffsetCovariance(16, 0, 1));
        for (int deg = 0; deg < 360; deg += 7) {
            double c = Math.cos(Math.toRadians(deg));
            double s = Math.sin(Math.toRadians(deg));
            OffsetCovariance turned = new OffsetCovariance(16 * c * c + s * s, 15 * c * s, 16 * s * s + c * c);
            assertThat(probability(3 * c, 3 * s, turned)).isCloseTo(asItIs, within(1e-4));
        }
    }

    private static WorkZone polygon(double... eastUpArcmin) {
        List<ZoneEdge> edges = new ArrayList<>();
        int corners = eastUpArcmin.length / 2;
        for (int i = 0; i < corners; i++) {
            int next = (i + 1) % corners;
            edges.add(new ZoneEdge(
                    AxisOffset.ofArcminutes(eastUpArcmin[2 * i], eastUpArcmin[2 * i + 1]),
                    AxisOffset.ofArcminutes(eastUpArcmin[2 * next], eastUpArcmin[2 * next + 1]),
                    "any",
                    LimitCause.DRIFT));
        }
        return new WorkZone(
                new Work(List.of(new VisualObservation(
                        "any",
                        Angle.ofDegrees(1),
                        Duration.ofMinutes(10),
                        new VisualObservation.Finding.Centred(),
                        new SkyRegion.Track("any", Angle.ZERO, Angle.ZERO, Angle.ofHours(1))))),
                edges,
                AxisOffset.NONE,
                Angle.ofArcminutes(0.1),
                "any");
    }

    /** Thin, slanting and cornered zones too; compared with random draws, whose standard error is the tolerance. */
    @ParameterizedTest
    @CsvSource({
        "0, 0, 3, 2, 0.5",
        "1, -1, 0.1, 0.2, 0",
        "4, 4, 5, 5, 0.999",
        "4, 4, 5, 5, -0.999",
        "30, 0, 15, 0.3, 0.8",
        "0, 0, 200, 200, 0",
        "-3, 2, 0.01, 6, 0.2"
    })
    void polygon_agreesWithRandomDraws(double east, double up, double sigmaEast, double sigmaUp, double correlation) {
        List<WorkZone> zones = List.of(
                polygon(-5, -4, 6, -3, 2, 7),
                // 40' long and 0.4' wide, from lower left to upper right.
                polygon(-20, -20.2, 20, 19.8, 20, 20.2, -20, -19.8),
                polygon(-20, 19.8, 20, -20.2, 20, -19.8, -20, 20.2));
        int draws = 200_000;
        int[] inside = new int[zones.size()];
        Random random = new Random(7);
        for (int i = 0; i < draws; i++) {
            double first = random.nextGaussian();
            double second = correlation * first + Math.sqrt(1 - correlation * correlation) * random.nextGaussian();
            AxisOffset drawn = AxisOffset.ofArcminutes(east + sigmaEast * first, up + sigmaUp * second);
            for (int z = 0; z < inside.length; z++) {
                inside[z] += zones.get(z).contains(drawn) ? 1 : 0;
            }
        }
        OffsetCovariance covariance =
                new OffsetCovariance(sigmaEast * sigmaEast, correlation * sigmaEast * sigmaUp, sigmaUp * sigmaUp);
        for (int z = 0; z < inside.length; z++) {
            double p = inside[z] / (double) draws;
            double standardError = Math.sqrt(Math.max(1.0 / draws, p * (1 - p)) / draws);
            assertThat(ZoneProbability.of(zones.get(z), AxisOffset.ofArcminutes(east, up), covariance))
                    .isCloseTo(p, within(4.5 * standardError + 1e-5));
        }
    }

    /** An infinitely long strip: the normal distribution, to five places. */
    @ParameterizedTest
    @CsvSource({"1, 0.682689", "2, 0.954500", "3, 0.997300"})
    void longStrip_isTheNormalDistribution(double halfWidth, double expected) {
        WorkZone strip = polygon(-1000, -halfWidth, 1000, -halfWidth, 1000, halfWidth, -1000, halfWidth);
        assertThat(ZoneProbability.of(strip, AxisOffset.NONE, new OffsetCovariance(1, 0, 1)))
                .isCloseTo(expected, within(1e-5));
    }
}
