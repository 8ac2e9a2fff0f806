package polewright.alignment.allowance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static polewright.alignment.allowance.Items.LARKFELL;
import static polewright.alignment.allowance.Items.MEAN;
import static polewright.alignment.allowance.Items.TINY;
import static polewright.alignment.allowance.Items.TUSSOCK_FLAT;
import static polewright.alignment.allowance.Items.UNGUIDED;
import static polewright.alignment.allowance.Items.along;
import static polewright.alignment.allowance.Items.at;
import static polewright.alignment.allowance.Items.outcome;
import static polewright.alignment.allowance.Items.shot;
import static polewright.alignment.allowance.Items.zone;

import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import polewright.alignment.work.Guiding;
import polewright.alignment.work.ImagingRun;
import polewright.alignment.work.SkyRegion;
import polewright.alignment.work.VisualObservation;
import polewright.alignment.work.WorkItem;
import polewright.mount.AxisOffset;
import polewright.mount.rig.Camera;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

@Tag("slow")
class ZoneFinderTest {
    private static final Camera MAIN = new Camera("main", 1800, 3.8, 4656, 3520);
    private static final Camera WIDE = new Camera("wide", 50, 3.8, 4656, 3520);
    private static final SkyRegion SKY = SkyRegion.Above.THIRTY_DEGREES;
    private static final Guiding GUIDED = new Guiding.Guided(Angle.ofDegrees(1));

    private static VisualObservation look(VisualObservation.Finding finding) {
        return new VisualObservation("look", Angle.ofDegrees(0.8), Duration.ofMinutes(15), finding, SKY);
    }

    private static List<WorkItem> everyKind() {
        return List.of(
                shot(MAIN, SKY, 60, UNGUIDED, 2.5),
                shot(MAIN, SKY, 300, GUIDED, 2.5),
                shot(WIDE, SKY, 120, UNGUIDED, 23),
                shot(MAIN, along(-30, 10, 40), 90, UNGUIDED, 3),
                look(new VisualObservation.Finding.Centred()),
                look(new VisualObservation.Finding.GoTo(Angle.ofArcminutes(24))));
    }

    /** Common practice: a minute without guiding at 1800 mm requires an axis within some arcminutes. */
    @Test
    void oneMinuteUnguidedAt1800Millimetres_needsAnAxisWithinSomeArcminutes() {
        WorkZone zone = zone(LARKFELL, MEAN, shot(MAIN, SKY, 60, UNGUIDED, 2.5));
        assertThat(zone.depth().arcminutes()).isBetween(7.0, 10.0);
        assertThat(zone.strictest()).isEqualTo("shot");
        assertThat(zone.edges()).allMatch(edge -> edge.cause() == LimitCause.DRIFT);
    }

    @Test
    void zones_areConvexAndClosed_withTheStatedDepthAtTheBestAim() {
        for (WorkItem item : everyKind()) {
            WorkZone zone = zone(LARKFELL, MEAN, item);
            List<ZoneEdge> edges = zone.edges();
            double nearest = Double.POSITIVE_INFINITY;
            for (int i = 0; i < edges.size(); i++) {
                ZoneEdge edge = edges.get(i);
                ZoneEdge next = edges.get((i + 1) % edges.size());
                assertThat(edge.to()).isEqualTo(next.from());
                AxisOffset along = edge.to().minus(edge.from());
                assertThat(cross(along, next.to().minus(next.from()))).isGreaterThanOrEqualTo(-1e-15);
                nearest = Math.min(
                        nearest,
                        cross(along, zone.bestAim().minus(edge.from()))
                                / along.distance().radians());
            }
            assertThat(zone.contains(zone.bestAim())).isTrue();
            assertThat(zone.depth().radians()).isCloseTo(nearest, within(1e-12));
        }
    }

    private static double cross(AxisOffset a, AxisOffset b) {
        return a.east().radians() * b.up().radians()
                - a.up().radians() * b.east().radians();
    }

    /** No point of a coarse grid over the zone is deeper than the best aim. */
    @Test
    void bestAim_isTheDeepestPoint() {
        WorkZone zone = zone(LARKFELL, MEAN, shot(MAIN, along(-30, 10, 40), 90, UNGUIDED, 3));
        for (double east = -20; east <= 20; east += 0.5) {
            for (double up = -20; up <= 20; up += 0.5) {
                AxisOffset point = AxisOffset.ofArcminutes(east, up);
                double depth = zone.edges().stream()
                        .mapToDouble(edge -> cross(edge.to().minus(edge.from()), point.minus(edge.from()))
                                / edge.to().minus(edge.from()).distance().radians())
                        .min()
                        .orElseThrow();
                assertThat(depth).isLessThanOrEqualTo(1.011 * zone.depth().radians());
            }
        }
    }

    /** The sky at 43.95° S is that at 43.95° N mirrored: north and south are exchanged, east and up are not. */
    @Test
    void mirroredSky_hasTheSameZone() {
        Site north = Site.ofDegrees(43.95, 170.40, 710);
        for (double dec : new double[] {-20, 10, 55}) {
            for (Guiding guiding : List.of(UNGUIDED, GUIDED)) {
                WorkZone one = zone(north, MEAN, shot(MAIN, along(-40, -5, dec), 120, guiding, 3));
                WorkZone other = zone(TUSSOCK_FLAT, MEAN, shot(MAIN, along(-40, -5, -dec), 120, guiding, 3));
                assertThat(other.depth().arcseconds())
                        .isCloseTo(
                                one.depth().arcseconds(),
                                within(0.002 * one.depth().arcseconds()));
                assertThat(other.bestAim().minus(one.bestAim()).distance().arcseconds())
                        .isLessThan(0.01 * one.depth().arcseconds());
                assertThat(other.eastSpan().high().arcseconds())
                        .isCloseTo(
                                one.eastSpan().high().arcseconds(),
                                within(0.01 * one.depth().arcseconds()));
            }
        }
    }

    @Test
    void zoneOfTwoItems_liesInTheZoneOfEach_andNamesTheStricter() {
        ImagingRun strict = shot(MAIN, SKY, 60, UNGUIDED, 2.5);
        VisualObservation easy = look(new VisualObservation.Finding.GoTo(Angle.ofArcminutes(24)));
        WorkZone both = zone(LARKFELL, MEAN, easy, strict);
        for (ZoneEdge edge : both.edges()) {
            AxisOffset inside = AxisOffset.ofArcminutes(
                    0.99 * edge.from().east().arcminutes(),
                    0.99 * edge.from().up().arcminutes());
            assertThat(zone(LARKFELL, MEAN, easy).contains(inside)).isTrue();
        }
        assertThat(both.strictest()).isEqualTo("shot");
    }

    /** A track at 85° is separate from regions: it lies in the area left out around the pole. */
    @Test
    void areaAroundThePole_isIncludedOnRequest() {
        SkyRegion toThePole = new SkyRegion.Above(Angle.ofDegrees(30), true);
        WorkZone with = zone(LARKFELL, MEAN, shot(MAIN, toThePole, 60, UNGUIDED, 2.5));
        WorkZone track = zone(LARKFELL, MEAN, shot(MAIN, along(-180, 180, 85), 60, UNGUIDED, 2.5));
        assertThat(with.edges().stream()
                        .map(edge -> AxisOffset.ofArcminutes(
                                0.98 * edge.from().east().arcminutes(),
                                0.98 * edge.from().up().arcminutes())))
                .allMatch(track::contains);
        // At the pole itself no guiding in right ascension holds a field.
        assertThat(outcome(LARKFELL, MEAN, shot(MAIN, SKY, 300, GUIDED, 2.5))).isInstanceOf(ZoneOutcome.Found.class);
        assertThat(outcome(LARKFELL, MEAN, shot(MAIN, toThePole, 300, GUIDED, 2.5)))
                .isInstanceOf(ZoneOutcome.Impossible.class);
    }

    @Test
    void goTo_allowsADiscAroundTheTruePole() {
        WorkZone zone = zone(LARKFELL, MEAN, look(new VisualObservation.Finding.GoTo(Angle.ofArcminutes(20))));
        assertThat(zone.depth().arcminutes()).isCloseTo(20, within(0.02));
        assertThat(zone.edges()).allMatch(edge -> edge.cause() == LimitCause.GO_TO);
    }

    @Test
    void undemandingWork_isBoundedAtOneDegree() {
        WorkZone zone = zone(LARKFELL, MEAN, shot(WIDE, SKY, 1, UNGUIDED, 23));
        assertThat(zone.depth().arcminutes()).isCloseTo(60, within(0.1));
        assertThat(zone.strictest()).isEqualTo("any mount");
        assertThat(zone.words())
                .isEqualTo("good enough for " + zone.work().items().get(0).name());
        assertThat(zone.edges()).allMatch(edge -> edge.cause() == LimitCause.MOUNT);
    }

    @Test
    void widePicture_isLimitedInItsCorner_andSmallOneAsAWhole() {
        assertThat(zone(LARKFELL, MEAN, shot(WIDE, along(-40, 0, -5), 120, UNGUIDED, 10))
                        .edges())
                .anyMatch(edge -> edge.cause() == LimitCause.CORNER);
        assertThat(zone(LARKFELL, MEAN, shot(MAIN, along(-40, 0, -5), 120, UNGUIDED, 10))
                        .edges())
                .noneMatch(edge -> edge.cause() == LimitCause.CORNER);
    }

    @Test
    void seriesWithoutRecentring_mustNotLeaveTheFrame() {
        ImagingRun shot = new ImagingRun(
                "shot",
                MAIN,
                along(-30, 30, 20),
                Duration.ofSeconds(2),
                Duration.ofHours(4),
                UNGUIDED,
                Angle.ofArcseconds(3));
        assertThat(zone(LARKFELL, MEAN, shot).edges()).allMatch(edge -> edge.cause() == LimitCause.LEAVES_FRAME);
    }

    @Test
    void impossibleExposure_givesTheLongestPossible_atWhichAZoneJustExists() {
        ImagingRun tooLong = shot(MAIN, SKY, 1200, UNGUIDED, 2.5);
        ZoneOutcome.Impossible none = (ZoneOutcome.Impossible) outcome(LARKFELL, MEAN, tooLong);
        assertThat(none.item()).isEqualTo("shot");
        assertThat(none.cause()).isEqualTo(LimitCause.DRIFT);
        Duration longest = none.longest().orElseThrow();
        assertThat(longest).isBetween(Duration.ofMinutes(2), Duration.ofMinutes(15));

        WorkZone zone = zone(LARKFELL, MEAN, tooLong.withSubExposure(longest));
        assertThat(zone.depth().arcminutes()).isLessThan(0.1);
        assertThat(outcome(
                        LARKFELL,
                        MEAN,
                        tooLong.withSubExposure(longest.multipliedBy(102).dividedBy(100))))
                .isInstanceOf(ZoneOutcome.Impossible.class);
    }

    /** Two hours trail, and nine are too many for any frame; the longest single exposure is still given. */
    @Test
    void impossibleExposureInImpossibleSeries_givesTheLongestExposure() {
        ImagingRun both = new ImagingRun(
                "shot",
                new Camera("narrow", 1800, 3.8, 300, 200),
                SKY,
                Duration.ofHours(2),
                Duration.ofHours(9),
                UNGUIDED,
                Angle.ofArcseconds(2.5));
        assertThat(((ZoneOutcome.Impossible) outcome(LARKFELL, MEAN, both.withSubExposure(Duration.ofSeconds(10))))
                        .cause())
                .isEqualTo(LimitCause.LEAVES_FRAME);

        ZoneOutcome.Impossible none = (ZoneOutcome.Impossible) outcome(LARKFELL, MEAN, both);

        assertThat(none.cause()).isEqualTo(LimitCause.DRIFT);
        Duration longest = none.longest().orElseThrow();
        assertThat(longest).isBetween(Duration.ofMinutes(2), Duration.ofMinutes(15));
        assertThat(outcome(LARKFELL, MEAN, shot(both.camera(), SKY, longest.toMillis() / 1000.0, UNGUIDED, 2.5)))
                .isInstanceOf(ZoneOutcome.Found.class);
    }

    @Test
    void impossibleLook_givesTheLongestStay() {
        VisualObservation look = new VisualObservation(
                "moons", Angle.ofArcseconds(30), Duration.ofHours(6), new VisualObservation.Finding.Centred(), SKY);
        ZoneOutcome.Impossible none = (ZoneOutcome.Impossible) outcome(TUSSOCK_FLAT, MEAN, look);
        assertThat(none.cause()).isEqualTo(LimitCause.LEAVES_FIELD);
        assertThat(outcome(TUSSOCK_FLAT, MEAN, look.withStay(none.longest().orElseThrow())))
                .isInstanceOf(ZoneOutcome.Found.class);
    }

    /**
     * Low stars need the axis above the true pole, high ones nearly at it: 433″ and 58″, calculated outside this
     * project.
     */
    @Test
    void starsThatNeedDifferentAxes_areAtOdds() {
        Site site = Site.ofDegrees(45, 0, 0);
        ImagingRun low = named("low", shot(TINY, at(-100, 35), 400, UNGUIDED, 6));
        ImagingRun high = named("high", shot(TINY, at(-45, 35), 900, UNGUIDED, 3));
        assertThat(outcome(site, MEAN, low)).isInstanceOf(ZoneOutcome.Found.class);
        assertThat(outcome(site, MEAN, high)).isInstanceOf(ZoneOutcome.Found.class);
        assertThat(outcome(site, MEAN, low, high)).isEqualTo(new ZoneOutcome.AtOdds("low", "high"));
    }

    private static ImagingRun named(String name, ImagingRun shot) {
        return new ImagingRun(
                name, shot.camera(), shot.region(), shot.subExposure(), shot.total(), shot.guiding(), shot.tolerance());
    }

    @Test
    void objectBelowTheHorizon_isRefused() {
        assertThatThrownBy(() -> outcome(LARKFELL, MEAN, shot(MAIN, at(0, -60), 60, UNGUIDED, 3)))
                .isInstanceOf(InputRefused.class)
                .hasMessage("'a star' is not above 5 degrees at this site when its observation begins. Check the"
                        + " declination, the hour angles (west positive) and the site's latitude.");
    }
}
