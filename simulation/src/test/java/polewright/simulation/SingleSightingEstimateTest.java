package polewright.simulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.alignment.sighting.CompassBearing;
import polewright.alignment.sighting.LevelledScale;
import polewright.alignment.sighting.StarDrift;
import polewright.alignment.sighting.StillPoint;
import polewright.mount.AxisOffset;
import polewright.mount.rig.Camera;
import polewright.mount.rig.Optic;
import polewright.mount.rig.Rig;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.NamedStars;
import polewright.sky.body.FixedStar;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/** The handbook's result from one exact measurement, in both hemispheres. */
class SingleSightingEstimateTest {
    private static final Instant NOW = Instant.parse("2026-11-25T21:00:00Z");
    private static final Angle NO_ERROR = Angle.ofArcseconds(1);
    private static final AxisOffset TRUTH = AxisOffset.ofArcminutes(20, -12);

    private final RandomGenerator random =
            RandomGeneratorFactory.of("L64X128MixRandom").create(1);

    private static Site site(double latitudeDeg) {
        return Site.ofDegrees(latitudeDeg, 0, 200);
    }

    private static Weather weather(Site site) {
        return Weather.standardAt(site.heightMetres());
    }

    private HiddenWedge wedge(Site site, Rig rig) {
        return HiddenWedge.of(site, rig, TRUTH, random);
    }

    private static SingleSightingEstimate reckoning(Site site, Rig rig) {
        return new SingleSightingEstimate(site, weather(site), rig);
    }

    private SimulatedObserver observer(Site site) {
        return new SimulatedObserver(weather(site), random);
    }

    @ParameterizedTest
    @ValueSource(doubles = {20, 54.6, -20, -43.95})
    void exactCompassAndScale_giveTheOffset(double latitudeDeg) {
        Site site = site(latitudeDeg);
        Rig rig = Rig.typicalForkOnWedge();
        HiddenWedge wedge = wedge(site, rig);
        CompassBearing compass = observer(site).compass(wedge, NOW, NO_ERROR);
        LevelledScale scale = observer(site).scale(wedge, NOW, NO_ERROR);
        assertThat(reckoning(site, rig)
                        .byReadings(compass, scale)
                        .minus(TRUTH)
                        .distance()
                        .arcminutes())
                .isLessThan(0.1);
    }

    /** The observer's error is a twentieth of the field; in a finder of a twentieth of a degree that is 0.15′. */
    @ParameterizedTest
    @ValueSource(doubles = {54.6, -43.95})
    void poleStarAboutTheCentreOfRotation_givesTheOffset(double latitudeDeg) {
        Site site = site(latitudeDeg);
        Rig rig = Rig.typicalForkOnWedge();
        ObservingMoment sky = ObservingMoment.of(site, SkyTime.of(NOW), weather(site));
        FixedStar poleStar =
                new HandbookStar(NamedStars.bundled().all()).ofThePole(sky).orElseThrow();
        Optic finder = rig.widestOptic().orElseThrow();
        Optic narrow = new Optic("finder", Angle.ofDegrees(0.05), finder.view(), finder.division());
        StillPoint seen = observer(site).stillPoint(wedge(site, rig), NOW, poleStar, narrow);
        assertThat(reckoning(site, rig)
                        .byStillPoint(seen)
                        .minus(TRUTH)
                        .distance()
                        .arcminutes())
                .isLessThan(0.6);
    }

    /** Refraction is neglected, as in handbooks: accurate to three minutes of arc for stars higher than 22 degrees. */
    @ParameterizedTest
    @ValueSource(doubles = {35, 54.6, -35, -43.95})
    void drift_givesEastNearTheMeridian_andUpInTheEastOrWest(double latitudeDeg) {
        Site site = site(latitudeDeg);
        Rig rig = Rig.typicalForkOnWedge();
        ObservingMoment sky = ObservingMoment.of(site, SkyTime.of(NOW), weather(site));
        HandbookStar stars = new HandbookStar(NamedStars.bundled().all());
        StarDrift onMeridian = drift(site, AxisOffset.ofArcminutes(20, 0), stars.nearTheMeridian(sky));
        StarDrift atTheSide = drift(site, AxisOffset.ofArcminutes(0, -12), stars.inTheEastOrWest(sky));
        assertThat(reckoning(site, rig).eastByDrift(onMeridian).arcminutes()).isCloseTo(20, within(3.0));
        assertThat(reckoning(site, rig).upByDrift(atTheSide).arcminutes()).isCloseTo(-12, within(3.0));
    }

    private StarDrift drift(Site site, AxisOffset truth, Optional<FixedStar> star) {
        HiddenWedge wedge = HiddenWedge.of(site, Rig.typicalForkOnWedge(), truth, random);
        return observer(site).drift(wedge, NOW, star.orElseThrow(), Duration.ofMinutes(10), NO_ERROR);
    }

    /** Three frames, each accurate to the arcseconds of such a camera. */
    @ParameterizedTest
    @ValueSource(doubles = {54.6, -43.95})
    void frames_giveTheOffset(double latitudeDeg) {
        Site site = site(latitudeDeg);
        Camera camera = new Camera("guide camera", 240, 3.75, 1280, 960);
        Rig rig = Rig.typicalForkOnWedge().withCameras(List.of(camera));
        CameraOnTube onTube = new CameraOnTube(
                (fork, at) -> observer(site).attitude(fork, at, camera), TubeOnFork.SQUARE, Angle.ofDegrees(45));
        AxisOffset seen = reckoning(site, rig)
                .byFrames(onTube.turned(wedge(site, rig), NOW).attitudes());
        assertThat(seen.minus(TRUTH).distance().arcminutes()).isLessThan(0.5);
    }

    /**
     * Turning by the full measured offset brings the axis to the pole, apart from rounding, if the screws follow
     * their pitch.
     */
    @ParameterizedTest
    @ValueSource(doubles = {20, 54.6, -20, -43.95})
    void turningByTheFullOffset_correctsIt(double latitudeDeg) {
        Site site = site(latitudeDeg);
        Rig rig = Rig.typicalForkOnWedge();
        SingleSightingEstimate reckoning = reckoning(site, rig);
        HiddenWedge drawn = wedge(site, rig);
        double azimuth = reckoning.azimuthTurns(TRUTH);
        double altitude = reckoning.altitudeTurns(TRUTH);
        double azimuthMoved =
                rig.azimuthScrew().move(azimuth, drawn.pointing().altitude()).arcminutes();
        double altitudeMoved =
                rig.altitudeScrew().move(altitude, drawn.pointing().altitude()).arcminutes();
        // Half an eighth of a turn is 1.5′.
        assertThat(azimuthMoved).isCloseTo(-drawn.pointing().azimuthError(site).arcminutes(), within(1.5));
        assertThat(altitudeMoved)
                .isCloseTo(-drawn.pointing().altitudeError(site).arcminutes(), within(1.5));
    }
}
