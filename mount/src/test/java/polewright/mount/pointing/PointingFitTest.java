package polewright.mount.pointing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.mount.rig.MountKind;
import polewright.sky.angle.Angle;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.Site;

class PointingFitTest {
    private static final Site NORTH = Site.ofDegrees(54.60, -2.90, 240);
    private static final Site SOUTH = Site.ofDegrees(-43.95, 170.40, 710);
    private static final Angle FINE = Angle.ofArcseconds(1);

    /** Sixty stars to 1″: separable terms are recovered to a few σ, with any zero of a mount that was never set. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 97, 179.9, -140})
    void termsBehindCentrings_areRecovered(double zeroDeg) {
        for (Site site : List.of(NORTH, SOUTH)) {
            SimulatedRig drawn = SimulatedRig.drawn(site, 1, new Random(3));
            SimulatedRig rig = new SimulatedRig(
                    site, drawn.terms().with(PointingTerm.HOUR_ANGLE_ZERO, Angle.ofDegrees(zeroDeg)), drawn.random());
            PointingModel model = fitted(site, rig.centrings(60, FINE));

            for (TermEstimate estimate : model.termEstimates()) {
                Angle wrong = estimate.value().minus(rig.terms().of(estimate.term()));
                assertThat(Math.abs(wrong.wrappedSigned().radians()))
                        .as("%s at %s: %s", estimate.term(), site, estimate.sigma())
                        .isLessThan(3.5 * estimate.sigma().radians());
            }
            assertThat(sigma(model, PointingTerm.AXIS_EAST).arcseconds()).isLessThan(2);
            assertThat(sigma(model, PointingTerm.CONE).arcseconds()).isLessThan(2);
            assertThat(sigma(model, PointingTerm.TUBE_SAG).arcseconds()).isLessThan(5);
        }
    }

    /**
     * An axis too high by as much as the fork sags in both directions is indistinguishable from no error (formula
     * sheet, first order).
     */
    @Test
    void forkSagInBothDirections_andAxisAltitude_areInseparable() {
        for (Site site : List.of(NORTH, SOUTH)) {
            SimulatedRig rig = SimulatedRig.drawn(site, 1, new Random(5));
            PointingModel model = fitted(site, rig.centrings(30, Angle.ofArcseconds(5)));

            InseparableTerms group = only(model.inseparable());

            assertThat(group.terms())
                    .containsExactly(PointingTerm.AXIS_UP, PointingTerm.FORK_SAG_FLAT, PointingTerm.FORK_SAG_SIDE);
            double flat = group.together().getOrDefault(PointingTerm.FORK_SAG_FLAT, 0.0);
            double side = group.together().getOrDefault(PointingTerm.FORK_SAG_SIDE, 0.0);
            double up = group.together().getOrDefault(PointingTerm.AXIS_UP, 0.0);
            assertThat(side / flat).isCloseTo(1, within(0.05));
            assertThat(up / flat).isCloseTo(site.hemisphereSign(), within(0.05));
            assertThat(group.sigma().arcseconds()).isBetween(30.0, 60.0);
            assertThat(group.knownSigma().arcseconds()).isLessThan(10);
            // The ambiguity is fully in the axis's altitude; its azimuth is not affected.
            assertThat(model.axisCovariance().sigmaUp().arcseconds()).isBetween(30.0, 60.0);
            assertThat(model.axisCovariance().sigmaEast().arcseconds()).isLessThan(15);
        }
    }

    @Test
    void equalSagInBothDirections_equalsARaisedAxis_toFirstOrder() {
        for (Site site : List.of(NORTH, SOUTH)) {
            Angle little = Angle.ofArcseconds(10);
            TermValues sag =
                    TermValues.NONE.with(PointingTerm.FORK_SAG_FLAT, little).with(PointingTerm.FORK_SAG_SIDE, little);
            TermValues raised = TermValues.NONE.with(PointingTerm.AXIS_UP, little.times(-site.hemisphereSign()));
            Random random = new Random(9);
            SimulatedRig rig = new SimulatedRig(site, sag, random);
            for (int i = 0; i < 100; i++) {
                HourAnglePlace place = rig.place();
                MountReading reading = new MountReading(place.hourAngle(), place.declination());
                Angle apart = SkyOffset.between(
                                ForkModel.looksAt(site, sag, reading), ForkModel.looksAt(site, raised, reading))
                        .distance();
                assertThat(apart.arcseconds()).isLessThan(0.01);
            }
        }
    }

    /**
     * Near the equator the cone error is equivalent to the zero of hour angle, and non-perpendicular axes have no
     * effect (formula sheet).
     */
    @Test
    void starsNearTheEquator_cannotSeparateConeFromZero_norConstrainTheAxesAngle() {
        SimulatedRig rig = SimulatedRig.drawn(NORTH, 1, new Random(6));
        List<Centring> centrings = new ArrayList<>();
        for (int h = -60; h <= 60; h += 10) {
            Angle dec = Angle.ofDegrees(h % 20 == 0 ? 4 : -4);
            centrings.add(rig.centring(new HourAnglePlace(Angle.ofDegrees(h), dec), Angle.ofArcseconds(5)));
        }
        PointingModel model = fitted(NORTH, centrings);

        assertThat(model.inseparable())
                .anySatisfy(g -> assertThat(g.terms()).contains(PointingTerm.CONE, PointingTerm.HOUR_ANGLE_ZERO));
        assertThat(sigma(model, PointingTerm.CONE).arcminutes()).isGreaterThan(5);
    }

    @Test
    void oneStar_supportsBothZerosAtMost_andManySupportTheRest() {
        SimulatedRig rig = SimulatedRig.drawn(SOUTH, 1, new Random(8));
        List<Centring> centrings = rig.centrings(12, Angle.ofArcseconds(10));

        assertThat(supported(fitted(SOUTH, centrings.subList(0, 1))))
                .isSubsetOf(PointingTerm.HOUR_ANGLE_ZERO, PointingTerm.DECLINATION_ZERO);
        assertThat(supported(fitted(SOUTH, centrings)))
                .contains(PointingTerm.AXIS_EAST, PointingTerm.AXIS_UP, PointingTerm.CONE, PointingTerm.AXES_NOT_SQUARE)
                .doesNotContain(PointingTerm.FORK_SAG_FLAT);
    }

    /**
     * A German mount has no fork. Its other side is a reading through the pole, where the cone error and
     * non-perpendicular axes change sign.
     */
    @Test
    void germanMount_hasNoForkSag_andBothSidesSeparateTheCone() {
        TermValues terms = TermValues.NONE.with(PointingTerm.CONE, Angle.ofArcminutes(8));
        List<Centring> centrings = new ArrayList<>();
        for (boolean isThrough : List.of(false, true)) {
            HourAnglePlace place = new HourAnglePlace(Angle.ofDegrees(10), Angle.ofDegrees(2));
            MountReading reading = ForkModel.readingFor(NORTH, terms, place, isThrough);
            centrings.add(new Centring("star", place, reading, Angle.ofArcseconds(10)));
        }
        PointingModel model = ((PointingOutcome.Fitted) PointingFit.of(MountKind.GERMAN, NORTH, centrings)).model();

        assertThat(model.termEstimates())
                .extracting(TermEstimate::term)
                .doesNotContain(PointingTerm.FORK_SAG_FLAT, PointingTerm.FORK_SAG_SIDE);
        assertThat(model.terms().of(PointingTerm.CONE).arcminutes()).isCloseTo(8, within(1.0));
        assertThat(model.terms().of(PointingTerm.FORK_SAG_SIDE)).isEqualTo(Angle.ZERO);
    }

    @Test
    void nextStar_minimisesTheError_andThePredictedErrorIsReached() {
        Random random = new Random(12);
        SimulatedRig rig = SimulatedRig.drawn(NORTH, 1, random);
        Angle sigma = Angle.ofArcseconds(20);
        List<Centring> centrings = rig.centrings(3, sigma);
        PointingModel model = fitted(NORTH, centrings);
        List<HourAnglePlace> sky = new ArrayList<>();
        List<HourAnglePlace> candidates = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            sky.add(rig.place());
            candidates.add(rig.place());
        }
        GoToSky wanted = GoToSky.of(model, sky);
        int best = wanted.best(model, candidates, sigma).orElseThrow();

        double promised =
                wanted.radius95(model.after(candidates.get(best), sigma)).arcminutes();
        centrings.add(rig.centring(candidates.get(best), sigma));
        PointingModel next = fitted(NORTH, centrings);
        assertThat(GoToSky.of(next, sky).radius95(next).arcminutes()).isCloseTo(promised, within(0.1 * promised));
        for (HourAnglePlace other : candidates) {
            assertThat(wanted.radius95(model.after(other, sigma)).arcminutes()).isGreaterThanOrEqualTo(promised);
        }
    }

    /** Radius for a circular distribution: √χ²(2 degrees) = 2.4477; for a linear one, 1.95996 (handbook tables). */
    @Test
    void radius95_containsNinetyFivePercent() {
        assertThat(GoToError.of(1, 0, 1).radius95().radians()).isCloseTo(2.4477, within(1e-4));
        assertThat(GoToError.of(0, 0, 1).radius95().radians()).isCloseTo(1.95996, within(1e-3));
        Random random = new Random(1);
        double radius = GoToError.of(1, 0.3, 0.2).radius95().radians();
        int inside = 0;
        for (int i = 0; i < 100_000; i++) {
            double west = random.nextGaussian();
            double north = 0.3 * west + Math.sqrt(0.2 - 0.09) * random.nextGaussian();
            inside += Math.hypot(west, north) <= radius ? 1 : 0;
        }
        assertThat(inside / 100_000.0).isCloseTo(0.95, within(0.003));
    }

    @Test
    void axisAsASighting_agreesWithItsOffset() {
        for (Site site : List.of(NORTH, SOUTH)) {
            SimulatedRig rig = SimulatedRig.drawn(site, 1, new Random(21));
            PointingModel model = fitted(site, rig.centrings(8, Angle.ofArcseconds(20)));
            var estimate = model.axisEstimate();
            var back = estimate.offsetCovariance(site);
            var there = model.axisCovariance();

            assertThat(estimate.axis().offset(site).east().arcminutes())
                    .isCloseTo(model.axisOffset().east().arcminutes(), within(1e-6));
            assertThat(back.eastEastArcmin2())
                    .isCloseTo(there.eastEastArcmin2(), within(0.02 * there.eastEastArcmin2()));
            assertThat(back.upUpArcmin2()).isCloseTo(there.upUpArcmin2(), within(0.02 * there.upUpArcmin2()));
        }
    }

    private static PointingModel fitted(Site site, List<Centring> centrings) {
        return ((PointingOutcome.Fitted) PointingFit.of(site, centrings)).model();
    }

    private static Angle sigma(PointingModel model, PointingTerm term) {
        return model.termEstimates().stream()
                .filter(s -> s.term() == term)
                .findFirst()
                .orElseThrow()
                .sigma();
    }

    private static EnumSet<PointingTerm> supported(PointingModel model) {
        EnumSet<PointingTerm> supported = EnumSet.noneOf(PointingTerm.class);
        model.termEstimates().stream().filter(TermEstimate::isSupported).forEach(s -> supported.add(s.term()));
        return supported;
    }

    private static InseparableTerms only(List<InseparableTerms> groups) {
        assertThat(groups).hasSize(1);
        return groups.get(0);
    }
}
