package polewright.simulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.Function;
import java.util.random.RandomGenerator;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import polewright.alignment.sighting.BodyBearing;
import polewright.alignment.sighting.Sighting;
import polewright.alignment.sighting.TurnedFrames;
import polewright.mount.AxisOffset;
import polewright.mount.rig.Camera;
import polewright.mount.rig.Optic;
import polewright.mount.rig.Orientation;
import polewright.mount.rig.Rig;
import polewright.mount.rig.View;
import polewright.sky.angle.Angle;
import polewright.sky.body.Ephemeris;
import polewright.sky.body.FixedStar;
import polewright.sky.body.SkyBody;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/**
 * The sightings' models against an observer computed by rotations of the whole sky and of the tube, with no shared
 * formula.
 */
class SimulatedObserverTest {
    private static final Angle SIGMA = Angle.ofArcminutes(10);
    private static final double AGREEMENT_SIGMAS = 1e-3;

    /** No errors at all. */
    private static final RandomGenerator EXACT = new RandomGenerator() {
        @Override
        public long nextLong() {
            return 0;
        }

        @Override
        public double nextGaussian() {
            return 0;
        }
    };

    private record Place(Site site, Weather weather, HiddenWedge wedge, Instant at, Random random) {
        static Place of(long seed) {
            Random random = new Random(seed);
            double latitudeDeg = (seed % 2 == 0 ? 1 : -1) * (3 + 80 * random.nextDouble());
            Site site = Site.ofDegrees(latitudeDeg, -180 + 360 * random.nextDouble(), 2000 * random.nextDouble());
            double size = 12 * random.nextDouble();
            double way = 2 * Math.PI * random.nextDouble();
            HiddenWedge wedge = HiddenWedge.of(
                    site,
                    Rig.typicalForkOnWedge(),
                    new AxisOffset(Angle.ofDegrees(size * Math.sin(way)), Angle.ofDegrees(size * Math.cos(way))),
                    random);
            Instant at =
                    Instant.parse("2026-01-01T00:00:00Z").plusSeconds(Math.round(365 * 86400 * random.nextDouble()));
            return new Place(site, Weather.standardAt(site.heightMetres()), wedge, at, random);
        }

        SimulatedObserver observer() {
            return new SimulatedObserver(weather, EXACT);
        }

        FixedStar star(double hourAngleDeg, double decDeg) {
            ObservingMoment moment = ObservingMoment.of(site, SkyTime.of(at), weather);
            var place = moment.apparent(new HourAnglePlace(Angle.ofDegrees(hourAngleDeg), Angle.ofDegrees(decDeg)));
            return new FixedStar("a star", moment.catalogueDirection(place));
        }

        /** A star that stays at least this high for an hour, and under 75°. */
        FixedStar anyStar(double leastDeg) {
            while (true) {
                FixedStar star = star(-180 + 360 * random.nextDouble(), -80 + 160 * random.nextDouble());
                double now = altitudeDeg(star, at);
                double later = altitudeDeg(star, at.plus(Duration.ofHours(1)));
                if (Math.min(now, later) > leastDeg && Math.max(now, later) < 75) {
                    return star;
                }
            }
        }

        double altitudeDeg(SkyBody body, Instant when) {
            ObservingMoment moment = ObservingMoment.of(site, SkyTime.of(when), weather);
            return moment.refracted(Ephemeris.apparent(body, moment)).altitude().degrees();
        }

        void assertAgrees(Sighting sighting) {
            for (double r : sighting.model(site, weather).residual(wedge.axis())) {
                assertThat(r)
                        .as(
                                "%s at latitude %.1f",
                                sighting.kind(), site.latitude().degrees())
                        .isCloseTo(0, within(AGREEMENT_SIGMAS));
            }
        }
    }

    static Stream<Place> places() {
        return LongStream.range(900, 960).mapToObj(Place::of);
    }

    @ParameterizedTest
    @MethodSource("places")
    void compassAndScale_agree(Place place) {
        place.assertAgrees(place.observer().compass(place.wedge(), place.at(), SIGMA));
        place.assertAgrees(place.observer().scale(place.wedge(), place.at(), SIGMA));
    }

    @ParameterizedTest
    @MethodSource("places")
    void bearingAndShadow_agree(Place place) {
        FixedStar star = place.anyStar(2);
        place.assertAgrees(
                place.observer().bearing(place.wedge(), place.at(), star, BodyBearing.Line.TOWARD_BODY, SIGMA));
        double sun = place.altitudeDeg(SolarSystemBody.SUN, place.at());
        if (sun > 1 && sun < 79) {
            place.assertAgrees(place.observer()
                    .bearing(place.wedge(), place.at(), SolarSystemBody.SUN, BodyBearing.Line.SHADOW, SIGMA));
        }
    }

    @ParameterizedTest
    @MethodSource("places")
    void frames_agree(Place place) {
        Camera camera = new Camera("guide camera", 240, 3.75, 1280, 960);
        CameraOnTube onTube = new CameraOnTube(
                (fork, at) -> place.observer().attitude(fork, at, camera),
                new TubeOnFork(Angle.ofDegrees(0.5), Angle.ofDegrees(0.3), Angle.ofDegrees(70), Angle.ZERO),
                Angle.ofDegrees(90 * place.random().nextDouble()));
        place.assertAgrees(TurnedFrames.of(
                onTube.turned(place.wedge(), place.at()).attitudes(), polewright.alignment.camera.Drive.STANDING));
    }

    @Test
    void sun_isUpAtManyOfThePlaces() {
        assertThat(places().filter(p -> p.altitudeDeg(SolarSystemBody.SUN, p.at()) > 1))
                .hasSizeGreaterThan(15);
    }

    @ParameterizedTest
    @MethodSource("places")
    void stillPoint_agreesInEveryView(Place place) {
        // A star up to 6° from the pole, and up.
        double dec = place.site().hemisphereSign() * (84 + 5.5 * place.random().nextDouble());
        FixedStar star = place.star(360 * place.random().nextDouble(), dec);
        if (place.altitudeDeg(star, place.at()) < 1) {
            star = place.star(0, dec);
        }
        for (Orientation orientation : Orientation.values()) {
            Optic optic = new Optic(
                    "finder",
                    Angle.ofDegrees(40),
                    new View(orientation, Angle.ofDegrees(360 * place.random().nextDouble())),
                    Optional.empty());
            place.assertAgrees(place.observer().stillPoint(place.wedge(), place.at(), star, optic));
        }
    }

    @ParameterizedTest
    @MethodSource("places")
    void drift_agrees(Place place) {
        // Half an hour, to a hundredth of an arcsecond: 1e-3 of a sigma of 10″.
        place.assertAgrees(place.observer()
                .drift(place.wedge(), place.at(), place.anyStar(8), Duration.ofMinutes(30), Angle.ofArcseconds(10)));
    }

    /** Readings scatter by their stated uncertainty. */
    @Test
    void errors_areAsLargeAsStated() {
        Place place = Place.of(2);
        SimulatedObserver observer = new SimulatedObserver(place.weather(), new Random(77));
        FixedStar star = place.anyStar(20);
        FixedStar poleStar = place.star(40, 89.2);
        Optic finder = new Optic("finder", Angle.ofDegrees(6), View.of(Orientation.INVERTED), Optional.empty());
        List<Function<HiddenWedge, Sighting>> kinds = List.of(
                w -> observer.compass(w, place.at(), Angle.ofDegrees(3)),
                w -> observer.scale(w, place.at(), Angle.ofDegrees(1)),
                w -> observer.bearing(w, place.at(), star, BodyBearing.Line.TOWARD_BODY, Angle.ofDegrees(0.7)),
                w -> observer.stillPoint(w, place.at(), poleStar, finder),
                w -> observer.drift(w, place.at(), star, Duration.ofMinutes(5), Angle.ofArcseconds(4)));
        int times = 400;
        for (Function<HiddenWedge, Sighting> kind : kinds) {
            double sum = 0;
            double squares = 0;
            int figures = 0;
            for (int i = 0; i < times; i++) {
                Sighting sighting = kind.apply(place.wedge());
                for (double r : sighting.model(place.site(), place.weather())
                        .residual(place.wedge().axis())) {
                    sum += r;
                    squares += r * r;
                    figures++;
                }
            }
            // Four standard errors of a mean and of a variance from so many.
            assertThat(sum / figures).isCloseTo(0, within(4 / Math.sqrt(figures)));
            assertThat(squares / figures).isCloseTo(1, within(4 * Math.sqrt(2.0 / figures)));
        }
    }
}
