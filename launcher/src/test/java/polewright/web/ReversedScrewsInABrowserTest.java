package polewright.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.assertions.LocatorAssertions;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.alignment.advice.Advice;
import polewright.alignment.advice.ScrewTurn;
import polewright.alignment.fix.Fix;
import polewright.alignment.fix.ScrewSenses;
import polewright.mount.AxisOffset;
import polewright.mount.rig.Rig;
import polewright.mount.rig.ScrewSense;
import polewright.operations.camera.CameraEvening;
import polewright.operations.watch.ModelWedge;
import polewright.session.NightState;
import polewright.simulation.camera.AmpGlow;
import polewright.simulation.camera.CameraOptics;
import polewright.simulation.camera.CameraPath;
import polewright.simulation.camera.Detector;
import polewright.simulation.camera.Distortion;
import polewright.simulation.camera.Exposure;
import polewright.simulation.camera.FrameRenderer;
import polewright.simulation.camera.PixelFaults;
import polewright.simulation.camera.SimulatedCamera;
import polewright.simulation.camera.SkyConditions;
import polewright.sky.atlas.StarAtlas;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.web.Browser.Device;

/**
 * Whole nights with an undescribed rig. Both screws are reversed and their gains are off by a quarter. The wedge model shares no
 * code with the program under test, and the person obeys every order and takes every sighting on the page.
 */
@Tag("slow")
class ReversedScrewsInABrowserTest {
    private static final String EVENING = "2026-11-25T20:00:00Z";
    private static final Site LARKFELL = Site.ofDegrees(54.60, -2.90, 240);
    private static final PlainSky SKY = new PlainSky(54.60, -2.90);
    private static final double ALLOWANCE_ARCMIN = 5;
    private static final double FARTHER = 1.3;
    private static final int MOST_STEPS = 50;
    private static final int MOST_FRAMES = 40;
    private static final double MOST_TURNS = 20;
    // Assumes a thread of 1.25 mm on arms of 200 and 180 mm.
    private static final double AZIMUTH_DEG_PER_TURN = -1.25 * Math.toDegrees(1.25 / 200);
    private static final double ALTITUDE_DEG_PER_TURN = -0.75 * Math.toDegrees(1.25 / 180);
    private static final double LEAN_DEG = 1;
    private static final LocatorAssertions.ContainsTextOptions SOON =
            new LocatorAssertions.ContainsTextOptions().setTimeout(60_000);

    @AutoClose
    private static final Browser BROWSER = new Browser();

    @TempDir
    private Path folder;

    private static ModelWedge wedge(double rightDeg, double highDeg, long seed) {
        return new ModelWedge(
                rightDeg,
                LARKFELL.latitude().degrees() + highDeg,
                AZIMUTH_DEG_PER_TURN,
                ALTITUDE_DEG_PER_TURN,
                LEAN_DEG,
                Instant.parse(EVENING),
                seed);
    }

    private static void assertBothKnownToBeReversed(Rig rig, ScrewSenses senses) {
        assertThat(rig.azimuthScrew().clockwise()).isEqualTo(ScrewSense.LEFT);
        assertThat(rig.altitudeScrew().clockwise()).isEqualTo(ScrewSense.LOWERS);
        assertThat(senses.isAzimuthKnown()).isTrue();
        assertThat(senses.isAltitudeKnown()).isTrue();
    }

    private static double arcmin(AxisOffset offset) {
        return offset.distance().arcminutes();
    }

    /** The next night knows from its beginning. */
    private static void assertLearnedForTheNextNight(ServedNight night) {
        Fix fix = night.session().tonight().orElseThrow().state().fix();
        assertBothKnownToBeReversed(fix.rig(), fix.senses());
        CommandOutcome begun = night.type("begin", "--again");
        assertThat(begun.isGood()).isTrue();
        Fix next = night.session().tonight().orElseThrow().state().fix();
        assertBothKnownToBeReversed(next.rig(), next.senses());
    }

    @ParameterizedTest
    @CsvSource({"PHONE, 2.2, -1.1, 1", "LAPTOP, -1.6, 0.9, 2"})
    void visualNight_endsAtStop_andTheAxisErrorGrowsNoMoreThanATestTurn(
            Device device, double rightDeg, double highDeg, long seed) {
        IndependentTelescope telescope = new IndependentTelescope(SKY, wedge(rightDeg, highDeg, seed), seed);
        try (ServedNight night = ServedNight.byEye(folder, EVENING);
                BrowserContext context = BROWSER.device(device)) {
            Page page = context.newPage();
            PersonAtThePage.begin(page, night);
            PersonAtThePage person = new PersonAtThePage(night, telescope);
            double first = arcmin(person.truth());
            double longestTest = 0;
            double farthest = first;
            for (int step = 0; step < MOST_STEPS && !(person.advice() instanceof Advice.Stop); step++) {
                Advice advice = person.advice();
                AxisOffset before = person.truth();
                person.follow(page);
                if (advice instanceof Advice.TurnScrews turn && !turn.tests().isEmpty()) {
                    longestTest = Math.max(longestTest, arcmin(person.truth().minus(before)));
                }
                farthest = Math.max(farthest, arcmin(person.truth()));
            }
            assertThat(page.locator(".steps .step").first()).containsText("Good enough");
            assertThat(arcmin(person.truth())).isLessThan(FARTHER * ALLOWANCE_ARCMIN);
            assertThat(farthest).isLessThan(FARTHER * first + longestTest);
            assertLearnedForTheNextNight(night);
        }
    }

    @ParameterizedTest
    @CsvSource({"PHONE, 1.2, 0.8, 3"})
    void cameraNight_endsAtStop_andAWrongTurnIsReportedOnTheNextFrame(
            Device device, double rightDeg, double highDeg, long seed) throws IOException {
        ModelWedge wedge = wedge(rightDeg, highDeg, seed);
        try (ServedNight night = new ServedNight(folder, EVENING);
                BrowserContext context = BROWSER.device(device)) {
            Page page = context.newPage();
            PersonAtThePage.begin(page, night);
            FollowingFrames person = new FollowingFrames(page, night, wedge, seed);
            double first = arcmin(SKY.offset(wedge.axis()));
            person.followToStop();
            assertThat(page.locator(".steps .step").first()).containsText("Good enough");
            assertThat(arcmin(SKY.offset(wedge.axis()))).isLessThan(ALLOWANCE_ARCMIN);
            assertThat(person.wrongWays)
                    .as("turns that took the axis away from the pole")
                    .isGreaterThanOrEqualTo(2);
            assertThat(person.farthestArcmin).isLessThan(FARTHER * first + person.longestTrialArcmin);
            assertLearnedForTheNextNight(night);
        }
    }

    /** Someone with a capture program and a hand on the screws, following the Now page. */
    private static final class FollowingFrames {
        private static final Pattern ORDER =
                Pattern.compile("(Altitude|Azimuth) screw (over )?((?:\\d+ )?\\d+(?:/\\d+)?) turns?"
                        + " (clockwise|counter-clockwise|the other way than before)");
        private static final SimulatedCamera CAMERA = SimulatedCamera.of(
                "Wren 0",
                new CameraOptics(50, 25, 7, 0.05, 0.1, Distortion.radial(0.001), false),
                Detector.ofGuideCamera(640, 480, 5.0, AmpGlow.NONE, new PixelFaults(20_264, 4e-5, 40, 1e-5)));

        private final Page page;
        private final ServedNight night;
        private final ModelWedge wedge;
        private final Random random;
        private final FrameRenderer renderer = new FrameRenderer(StarAtlas.bundled());
        private final Map<ScrewTurn.Which, Double> last = new EnumMap<>(ScrewTurn.Which.class);
        private int frames;
        private int wrongWays;
        private double farthestArcmin;
        private double longestTrialArcmin;

        FollowingFrames(Page page, ServedNight night, ModelWedge wedge, long seed) {
            this.page = page;
            this.night = night;
            this.wedge = wedge;
            this.random = new Random(seed);
        }

        private NightState night() {
            return night.session().tonight().orElseThrow().state();
        }

        void followToStop() throws IOException {
            axisByFrames();
            while (frames < MOST_FRAMES && !(night().advice() instanceof Advice.Stop)) {
                page.navigate(night.address("/"));
                List<String> steps = page.locator(".steps .step").allTextContents();
                List<Ordered> orders = orders(steps);
                if (!orders.isEmpty()) {
                    turn(orders);
                } else if (night().advice() instanceof Advice.Clamp) {
                    wedge.shift(0.01 * random.nextGaussian(), 0.01 * random.nextGaussian());
                    page.locator(".done button.main").click();
                    assertThat(page.locator(".said")).containsText("Logged #", SOON);
                } else {
                    // One more frame, whatever there is to see.
                    take();
                }
            }
            page.navigate(night.address("/"));
        }

        private void axisByFrames() throws IOException {
            page.navigate(night.address("/"));
            page.locator("a.main").click();
            wedge.swing(-50);
            take();
            wedge.swing(45);
            take();
            assertThat(page.locator("#frame")).containsText("Axis: ", SOON);
        }

        private record Ordered(ScrewTurn.Which screw, double turns, boolean isTrial) {}

        private List<Ordered> orders(List<String> steps) {
            List<Ordered> orders = new ArrayList<>();
            for (String step : steps) {
                Matcher order = ORDER.matcher(step);
                if (order.find()) {
                    ScrewTurn.Which screw =
                            order.group(1).equals("Azimuth") ? ScrewTurn.Which.AZIMUTH : ScrewTurn.Which.ALTITUDE;
                    double size = size(order.group(3));
                    assertThat(size).as(step).isLessThanOrEqualTo(MOST_TURNS);
                    double sense = switch (order.group(4)) {
                        case "clockwise" -> 1;
                        case "counter-clockwise" -> -1;
                        default -> -Math.signum(last.getOrDefault(screw, 1.0));
                    };
                    orders.add(new Ordered(screw, sense * size, step.contains("which way") || step.contains("test")));
                }
            }
            return orders;
        }

        private static double size(String fraction) {
            double size = 0;
            for (String part : fraction.split(" ", -1)) {
                String[] over = part.split("/", -1);
                size += Double.parseDouble(over[0]) / (over.length > 1 ? Double.parseDouble(over[1]) : 1);
            }
            return size;
        }

        /** Turns one screw, then takes a frame. */
        private void turn(List<Ordered> orders) throws IOException {
            Ordered order = orders.get(0);
            boolean azimuth = order.screw() == ScrewTurn.Which.AZIMUTH;
            AxisOffset before = SKY.offset(wedge.axis());
            wedge.turn(azimuth ? order.turns() : 0, azimuth ? 0 : order.turns());
            last.put(order.screw(), order.turns());
            AxisOffset after = SKY.offset(wedge.axis());
            farthestArcmin = Math.max(farthestArcmin, arcmin(after));
            if (order.isTrial()) {
                longestTrialArcmin = Math.max(longestTrialArcmin, arcmin(after.minus(before)));
            }
            take();
            double went = azimuth
                    ? after.east().arcminutes() - before.east().arcminutes()
                    : after.up().arcminutes() - before.up().arcminutes();
            double wanted = azimuth ? -before.east().arcminutes() : -before.up().arcminutes();
            if (went * wanted < 0 && Math.abs(wanted) > ALLOWANCE_ARCMIN) {
                wrongWays++;
                String way = azimuth ? (went > 0 ? "right" : "left") : (went > 0 ? "up" : "down");
                assertThat(page.locator("#frame"))
                        .containsText((azimuth ? "Azimuth" : "Altitude") + " went " + way + ". Turn the other way.");
            }
        }

        private void take() throws IOException {
            frames++;
            night.wait(Duration.ofSeconds(60));
            wedge.advance(Duration.ofSeconds(60));
            page.navigate(night.address("/frames"));
            String name = String.format(Locale.ROOT, "frame-%02d.fits", frames);
            Exposure exposure = new Exposure(
                    CAMERA,
                    CameraPath.standing(wedge.cameraToEnu()),
                    LARKFELL,
                    Weather.standardAt(LARKFELL.heightMetres()),
                    SkyConditions.COUNTRY,
                    night.now(),
                    Duration.ofSeconds(1));
            Path part = CameraEvening.write(
                    night.frames().resolve(name + ".part"),
                    renderer.render(exposure, random).frame());
            Files.move(part, night.frames().resolve(name), StandardCopyOption.ATOMIC_MOVE);
            assertThat(page.locator("#frame")).containsText(name, SOON);
        }
    }
}
