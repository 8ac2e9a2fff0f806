package polewright.alignment.fix;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import polewright.alignment.sighting.BodyAltitude;
import polewright.alignment.sighting.BodyBearing;
import polewright.alignment.sighting.CompassBearing;
import polewright.alignment.sighting.DriftDirection;
import polewright.alignment.sighting.LevelledScale;
import polewright.alignment.sighting.Sighting;
import polewright.alignment.sighting.StarDrift;
import polewright.alignment.sighting.StillPoint;
import polewright.mount.AxisOffset;
import polewright.mount.AxisPointing;
import polewright.mount.rig.ClockDirection;
import polewright.mount.rig.Orientation;
import polewright.mount.rig.Rig;
import polewright.mount.rig.View;
import polewright.sky.angle.Angle;
import polewright.sky.body.FixedStar;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.place.Site;

/** Each of the usual mistakes, planted in an otherwise consistent night. */
class MisreadingTest {
    private static final Rig RIG = Rig.typicalForkOnWedge();
    private static final Angle FINDER = Angle.ofDegrees(16);
    private static final Angle EYE_IN_FINDER = Angle.ofArcminutes(15);
    // The 95 % point of chi-squared with two degrees of freedom is −2 ln 0.05.
    private static final double REGION_95 = -2 * Math.log(0.05);

    /**
     * A mistake.
     *
     * @param cause the cause that has to be named
     * @param offset offset of the axis at which the possible mistakes of this sighting differ; east and west are
     *     swapped in the south, where azimuth runs the other way
     * @param made the sighting as wrongly entered
     */
    private record Mistake(String name, String cause, AxisOffset offset, Function<KnownAxis, Sighting> made) {
        @Override
        public String toString() {
            return name;
        }
    }

    private static AxisOffset degrees(double east, double up) {
        return AxisOffset.ofArcminutes(60 * east, 60 * up);
    }

    private static final List<Mistake> MISTAKES = List.of(
            new Mistake(
                    "declination the wrong way",
                    "the declination had been taken the wrong way (east and west swapped)",
                    degrees(1, 0.5),
                    a -> compass(a, (read, m) -> m.negated(), (read, m) -> read)),
            new Mistake(
                    "bearing on the wrong side of north",
                    "the bearing was on the other side of north (east and west swapped)",
                    degrees(-4, 1),
                    a -> compass(a, (read, m) -> m, (read, m) -> read.negated().wrappedPositive())),
            new Mistake(
                    "wrong end of the compass",
                    "the compass had been read from the wrong end (south for north)",
                    degrees(-1, 1),
                    a -> compass(
                            a,
                            (read, m) -> m,
                            (read, m) -> read.plus(Angle.HALF_TURN).wrappedPositive())),
            new Mistake(
                    "scale from the zenith",
                    "the scale counts from the zenith (90 degrees minus the altitude)",
                    degrees(1, -3),
                    a -> {
                        LevelledScale read = a.scale(LevelledScale.USUAL_SIGMA);
                        return new LevelledScale(read.at(), Angle.QUARTER_TURN.minus(read.altitude()), read.sigma());
                    }),
            new Mistake(
                    "altitude difference the wrong way round",
                    "the difference had been taken the wrong way round (up and down swapped)",
                    degrees(1, 1),
                    a -> {
                        BodyAltitude read = a.altitude(BodyAltitude.USUAL_SIGMA);
                        return new BodyAltitude(
                                read.at(), read.body(), read.axisAboveBody().negated(), read.sigma());
                    }),
            new Mistake(
                    "bearing measured the other way round",
                    "the angle had been measured the other way round (east and west swapped)",
                    degrees(1, 1),
                    a -> {
                        BodyBearing read = a.bearing(BodyBearing.USUAL_SIGMA);
                        return new BodyBearing(
                                read.at(),
                                read.body(),
                                read.line(),
                                read.clockwise().negated(),
                                read.sigma());
                    }),
            new Mistake(
                    "bearing from the other end of the line",
                    "it had been measured from the other end of the line",
                    degrees(1, 1),
                    a -> {
                        BodyBearing read = a.bearing(BodyBearing.USUAL_SIGMA);
                        return new BodyBearing(
                                read.at(),
                                read.body(),
                                read.line(),
                                read.clockwise().plus(Angle.HALF_TURN),
                                read.sigma());
                    }),
            new Mistake(
                    "shadow measured the other way round",
                    "the angle had been measured the other way round (east and west swapped)",
                    degrees(1, 1),
                    a -> shadow(a, 0, Angle::negated)),
            new Mistake(
                    "from the Sun's side",
                    "it had been measured from the Sun's side of the plumb line, not its shadow's",
                    degrees(1, 1),
                    a -> shadow(a, 0, clockwise -> clockwise.plus(Angle.HALF_TURN))),
            new Mistake(
                    "clock an hour fast",
                    "the clock is one hour off (summer time)",
                    degrees(1, 1),
                    a -> shadow(a, 1, clockwise -> clockwise)),
            new Mistake(
                    "clock an hour slow",
                    "the clock is one hour off (summer time)",
                    degrees(1, 1),
                    a -> shadow(a, -1, clockwise -> clockwise)),
            new Mistake(
                    "drift on the meridian, north for south",
                    "north and south were swapped",
                    degrees(1, 0),
                    a -> KnownAxis.reversed(a.driftOnMeridian(5, Angle.ofArcseconds(4)))),
            new Mistake(
                    "drift in the west, north for south",
                    "north and south were swapped",
                    degrees(0, 1),
                    a -> KnownAxis.reversed(a.driftInWest(5, Angle.ofArcseconds(4)))),
            still("inverted, called erect", Orientation.INVERTED, Orientation.ERECT, degrees(1.5, 2)),
            still("mirrored, called erect", Orientation.MIRRORED, Orientation.ERECT, degrees(3, 2)),
            still("erect, called inverted", Orientation.ERECT, Orientation.INVERTED, degrees(2, 2)),
            still("mirrored, called inverted", Orientation.MIRRORED, Orientation.INVERTED, degrees(2, 3)),
            still("erect, called mirrored", Orientation.ERECT, Orientation.MIRRORED, degrees(3, 1.5)),
            still("inverted, called mirrored", Orientation.INVERTED, Orientation.MIRRORED, degrees(1.5, 3)),
            new Mistake(
                    "centre of rotation seen from the star",
                    // In a mirrored view, the opposite direction cannot be explained by another view.
                    "the centre of rotation had been given from the star, instead of the star from the centre",
                    degrees(2, 3),
                    a -> {
                        StillPoint read = a.stillPoint(View.of(Orientation.MIRRORED), FINDER, EYE_IN_FINDER);
                        ClockDirection opposite = ClockDirection.ofAngle(
                                read.toward().clockwiseFromTop().plus(Angle.HALF_TURN));
                        return new StillPoint(
                                read.at(), read.star(), read.distance(), opposite, read.view(), read.sigma());
                    }));

    private static Mistake still(String name, Orientation was, Orientation said, AxisOffset offset) {
        return new Mistake(
                "centre of rotation " + name,
                "the view were " + was.name().toLowerCase(Locale.ROOT) + ", not "
                        + said.name().toLowerCase(Locale.ROOT),
                offset,
                a -> {
                    StillPoint read = a.stillPoint(View.of(was), FINDER, EYE_IN_FINDER);
                    return new StillPoint(
                            read.at(), read.star(), read.distance(), read.toward(), View.of(said), read.sigma());
                });
    }

    private static CompassBearing compass(
            KnownAxis a, BiFunction<Angle, Angle, Angle> declination, BiFunction<Angle, Angle, Angle> bearing) {
        CompassBearing read = a.compass(CompassBearing.USUAL_SIGMA);
        return new CompassBearing(
                read.at(),
                bearing.apply(read.magneticBearing(), read.declination()),
                declination.apply(read.magneticBearing(), read.declination()),
                read.sigma());
    }

    private static BodyBearing shadow(KnownAxis a, int clockFastHours, Function<Angle, Angle> entered) {
        BodyBearing read = a.shadow(BodyBearing.USUAL_SIGMA);
        return new BodyBearing(
                read.at().plusSeconds(3600L * clockFastHours),
                SolarSystemBody.SUN,
                BodyBearing.Line.SHADOW,
                entered.apply(read.clockwise()),
                read.sigma());
    }

    static Stream<Arguments> mistakes() {
        return MISTAKES.stream()
                .flatMap(m -> Stream.of(54.60, 31.0, -43.95, -20.0).map(latitude -> Arguments.of(m, latitude)));
    }

    @ParameterizedTest(name = "{0}, latitude {1}")
    @MethodSource("mistakes")
    void mistake_isSetAsideWithItsCause_andTheRestIsKept(Mistake mistake, double latitudeDeg) {
        Site site = Site.ofDegrees(latitudeDeg, 0, 200);
        Random random = new Random(mistake.name().hashCode() + Math.round(latitudeDeg));
        AxisOffset offset = new AxisOffset(
                mistake.offset().east().times(site.hemisphereSign()),
                mistake.offset().up());
        KnownAxis known = new KnownAxis(site, AxisPointing.of(site, offset), () -> 0.7 * random.nextGaussian());
        List<Step> steps = known.consistentNight();
        long wrong = 20;
        steps.add(3, known.step(wrong, mistake.made().apply(known)));

        Fix fix = FixSolver.solve(site, RIG, KnownAxis.AIR, steps);

        assertThat(fix).isInstanceOf(Fix.Solved.class);
        assertThat(fix.agreements().stream().filter(Agreement::contradictory).map(Agreement::seq))
                .containsExactly(wrong);
        // A star on the other side of the meridian may show the same drift.
        assertThat(fix.agreement(wrong).orElseThrow().likelyCause().orElseThrow())
                .contains(mistake.cause());
        AxisOffset error = fix.state().offset().minus(known.axis().offset(site));
        assertThat(fix.state().offsetCovariance().normalisedSquare(error)).isLessThan(REGION_95);
    }

    @Test
    void driftTowardAnEdge_inTheWrongView_isExplainedByTheView() {
        Site site = Site.ofDegrees(54.60, 0, 240);
        KnownAxis known = KnownAxis.exactly(site, degrees(1, 0.5));
        View inverted = View.of(Orientation.INVERTED);
        // In the north-west, celestial north is neither up nor horizontal, so each view shows the drift in another
        // direction.
        FixedStar star = known.star(60, 30);
        Sighting right = known.driftTowardTopOrBottom(known.star(-1, 0), 5, inverted, Angle.ofArcseconds(6));
        StarDrift plain = known.drift(star, 5, Angle.ofArcseconds(6));
        assertThat(right.model(site, KnownAxis.AIR).residual(known.axis().elevatedEnd())[0])
                .isBetween(-1.0, 1.0);

        StarDrift seenMirrored = new StarDrift(
                plain.at(),
                plain.length(),
                star,
                plain.drift(),
                towardEdgeOf(View.of(Orientation.MIRRORED), known, plain),
                plain.sigma());
        StarDrift saidInverted = new StarDrift(
                plain.at(),
                plain.length(),
                star,
                plain.drift(),
                new DriftDirection.TowardEdge(((DriftDirection.TowardEdge) seenMirrored.direction()).edge(), inverted),
                plain.sigma());
        List<Step> steps = known.consistentNight();
        steps.add(known.step(20, saidInverted));

        Fix fix = FixSolver.solve(site, RIG, KnownAxis.AIR, steps);

        assertThat(fix.agreement(20).orElseThrow().contradictory()).isTrue();
        assertThat(fix.agreement(20).orElseThrow().likelyCause().orElseThrow())
                .contains("the view were mirrored, not inverted");
    }

    /** The half-hour clock direction of that drift in a view. */
    private static DriftDirection towardEdgeOf(View view, KnownAxis known, StarDrift plain) {
        DriftDirection best = plain.direction();
        double least = Double.POSITIVE_INFINITY;
        for (int half = 1; half <= 24; half++) {
            var entered = new DriftDirection.TowardEdge(new ClockDirection(half / 2.0), view);
            StarDrift read =
                    new StarDrift(plain.at(), plain.length(), plain.star(), plain.drift(), entered, plain.sigma());
            double off = Math.abs(read.model(known.site(), KnownAxis.AIR)
                    .residual(known.axis().elevatedEnd())[0]);
            if (off < least) {
                least = off;
                best = entered;
            }
        }
        return best;
    }
}
