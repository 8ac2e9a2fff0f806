package polewright.cli;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.random.RandomGenerator;
import polewright.alignment.advice.SightingKind;
import polewright.alignment.allowance.DiscAllowance;
import polewright.alignment.work.Guiding;
import polewright.alignment.work.ImagingRun;
import polewright.alignment.work.SkyRegion;
import polewright.alignment.work.Work;
import polewright.alignment.work.WorkPreset;
import polewright.mount.AxisOffset;
import polewright.mount.rig.Camera;
import polewright.mount.rig.Rig;
import polewright.operations.practice.InventedSite;
import polewright.session.GroundPlan;
import polewright.simulation.ActionCosts;
import polewright.simulation.CameraOnTube;
import polewright.simulation.DrawnSky;
import polewright.simulation.HiddenWedge;
import polewright.simulation.Photograph;
import polewright.simulation.RehearsedNight;
import polewright.simulation.camera.SimulatedCamera;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.NamedStar;
import polewright.sky.atlas.NamedStars;
import polewright.sky.atlas.StarAtlas;
import polewright.sky.body.FixedStar;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/**
 * Place and time of the demo: invented sites under the real sky.
 *
 * @param name of the site
 * @param typed the site as one would type it
 * @param evening when the night begins
 * @param poleStar of that hemisphere
 */
record DemoScene(String name, Site site, String typed, Instant evening, String poleStar) {
    static final DemoScene LARKFELL = new DemoScene(InventedSite.LARKFELL, "Polaris");
    static final DemoScene TUSSOCK_FLAT = new DemoScene(InventedSite.TUSSOCK_FLAT, "Sigma Octantis");

    private static final Camera MAIN_CAMERA = new Camera("main camera", 1500, 3.76, 4144, 2822);
    private static final double LEAST_OFFSET_DEG = 3;
    private static final double SPREAD_OFFSET_DEG = 1;
    // The camera records fainter stars than the atlas has.
    private static final double FAINTEST_STAR = 13.5;

    private DemoScene(InventedSite invented, String poleStar) {
        this(invented.siteName(), invented.site(), invented.typed(), invented.evening(), poleStar);
    }

    /** The plan for bare ground. */
    GroundPlan ground() {
        NamedStar star = NamedStars.bundled().named(poleStar);
        ObservingMoment moment = ObservingMoment.of(site, SkyTime.of(evening), Weather.standardAt(site.heightMetres()));
        return GroundPlan.of(moment, new FixedStar(star.label(), star.place()));
    }

    /** The night of an observer without a camera. */
    List<RehearsedNight.Moment> byEye(Consumer<RehearsedNight.Moment> told, RandomGenerator random) {
        Rig rig = Rig.typicalForkOnWedge();
        Work work = new Work(List.of(WorkPreset.CASUAL_LOOK.with(rig), WorkPreset.PLANETS.with(rig)));
        return RehearsedNight.play(setting(rig, work, List.of(), random), Optional.empty(), told, random);
    }

    /** The night of an observer with a small camera on the tube, which stays in its home position. */
    List<RehearsedNight.Moment> withFrames(
            Consumer<Photograph> album, Consumer<RehearsedNight.Moment> told, RandomGenerator random) {
        SimulatedCamera camera = SimulatedCamera.guideCamera();
        Rig rig = Rig.typicalForkOnWedge().withCameras(List.of(camera.inRig("guide camera")));
        RehearsedNight.Setting setting = setting(
                rig,
                new Work(List.of(WorkPreset.CASUAL_LOOK.with(rig), pictures())),
                List.of(SightingKind.COMPASS, SightingKind.LEVEL_AND_SCALE),
                random);
        DrawnSky sky = DrawnSky.of(StarAtlas.bundled()).withInventedStarsTo(FAINTEST_STAR);
        CameraOnTube onTube = CameraOnTube.ofDrawnFrames(camera, sky, setting, random, album);
        return RehearsedNight.play(setting, Optional.of(onTube), told, random);
    }

    /** Imaging through the main tube, two-minute exposures, unguided. */
    private static ImagingRun pictures() {
        return new ImagingRun(
                "pictures",
                MAIN_CAMERA,
                SkyRegion.Above.THIRTY_DEGREES,
                Duration.ofMinutes(2),
                Duration.ofHours(1),
                new Guiding.Unguided(),
                ImagingRun.usualTolerance(MAIN_CAMERA, Angle.ofArcseconds(3)));
    }

    private RehearsedNight.Setting setting(Rig rig, Work work, List<SightingKind> before, RandomGenerator random) {
        double direction = 2 * Math.PI * random.nextDouble();
        double distanceArcmin = 60 * (LEAST_OFFSET_DEG + SPREAD_OFFSET_DEG * random.nextDouble());
        AxisOffset hidden =
                AxisOffset.ofArcminutes(distanceArcmin * Math.sin(direction), distanceArcmin * Math.cos(direction));
        return new RehearsedNight.Setting(
                name,
                HiddenWedge.of(site, rig, hidden, random),
                DiscAllowance.VISUAL,
                Optional.of(work),
                ActionCosts.USUAL,
                evening,
                NamedStars.bundled().all(),
                before);
    }
}
