package polewright.operations.watch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.alignment.advice.Advice;
import polewright.alignment.advice.FollowedScrews;
import polewright.alignment.advice.ScrewTurn;
import polewright.alignment.advice.SightingKind;
import polewright.alignment.camera.Drive;
import polewright.alignment.fix.AxisState;
import polewright.alignment.fix.Fix;
import polewright.mount.rig.ScrewSense;
import polewright.operations.CommandRun;
import polewright.operations.Pause;
import polewright.operations.Workbench;
import polewright.report.text.WatchWords;
import polewright.session.NightState;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.attitude.CameraAttitude;
import polewright.store.NightLog;

/** Someone follows the order of each frame, on a wedge whose screws differ from the rig description. */
@SuppressWarnings("NullAway.Init") // Each test begins a night with a wedge of its own.
class WatchSessionTest {
    private static final double LATITUDE = 54.60;
    private static final Instant EVENING = Instant.parse("2026-11-25T20:00:00Z");
    // Assumed for an undescribed rig: screws of 1.25 mm pitch, 200 and 180 mm from their pivots.
    private static final double AZIMUTH_PER_TURN = Math.toDegrees(Math.atan(1.25 / 200));
    private static final double ALTITUDE_PER_TURN = Math.toDegrees(Math.atan(1.25 / 180));

    @TempDir
    private Path folder;

    private CommandRun person;
    private ModelWedge wedge;
    private WatchSession session;
    private TurningWatch watch;
    private final List<WatchEvent> watchEvents = new ArrayList<>();
    private Optional<WatchStep.ScrewsFollowed> followed = Optional.empty();
    private double farthestDeg;
    private double firstDeg;

    private void begin(double azimuthFactor, double altitudeFactor, long seed, String... rig) {
        person = new CommandRun(folder, "2026-11-25T20:00:00Z");
        List<String> typed = new ArrayList<>(List.of("begin", "--site", "54.60,-2.90,240", "--name", "Larkfell"));
        typed.addAll(List.of(rig));
        person.good(typed.toArray(String[]::new));
        wedge = new ModelWedge(
                1.9,
                LATITUDE - 1.1,
                azimuthFactor * AZIMUTH_PER_TURN,
                altitudeFactor * ALTITUDE_PER_TURN,
                1,
                EVENING,
                seed);
        firstDeg = offDeg();
        farthestDeg = firstDeg;
        startWatching();
    }

    private void startWatching() {
        watch = new TurningWatch(
                night().begun().site(), FollowedScrews.Known.of(night().fix()), night().allowance(), Drive.NOT_TOLD);
        Workbench bench = new Workbench(
                Clock.fixed(EVENING, ZoneOffset.UTC),
                Map.of(),
                new PrintWriter(new StringWriter()),
                new PrintWriter(new StringWriter()),
                false,
                Pause.REAL);
        session = new WatchSession(
                watch,
                WatchLog.ofTonight(bench, () -> NightLog.open(person.log()), Optional.empty()),
                watchEvents::add);
    }

    private NightState night() {
        return NightState.of(events());
    }

    private List<LoggedEvent> events() {
        try (NightLog log = NightLog.open(person.log())) {
            return log.events(log.latest().orElseThrow());
        }
    }

    private double offDeg() {
        Vector3D pole = new Vector3D(0, Math.cos(Math.toRadians(LATITUDE)), Math.sin(Math.toRadians(LATITUDE)));
        return Math.toDegrees(Vector3D.angle(wedge.axis(), pole));
    }

    private void findTheAxis() {
        wedge.turnedFrames().forEach(this::addFrame);
        assertThat(events()).hasSize(2);
    }

    private void addFrame(CameraAttitude frame) {
        session.add(frame, step -> {
            if (step instanceof WatchStep.ScrewsFollowed screws) {
                followed = Optional.of(screws);
            }
        });
    }

    private AxisState.Turns order() {
        FollowedScrews.Orders orders = watch.screws().orElseThrow().orders();
        return new AxisState.Turns(
                orders.azimuth().clockwiseTurns(), orders.altitude().clockwiseTurns());
    }

    /** Makes the ordered turns of both screws, and takes a frame. */
    private void followOrders() {
        AxisState.Turns order = order();
        turnAndTakeFrame(order.azimuth(), order.altitude());
    }

    private void turnAndTakeFrame(double azimuth, double altitude) {
        wedge.turn(azimuth, altitude);
        farthestDeg = Math.max(farthestDeg, offDeg());
        wedge.advance(Duration.ofSeconds(40));
        addFrame(wedge.frame());
        assertLogAgrees();
    }

    /** The log's fix agrees with the frame, and the advised turns go in the ordered direction. */
    private void assertLogAgrees() {
        NightState night = night();
        WatchStep.ScrewsFollowed last = followed.orElseThrow();
        assertThat(night.fix()).isInstanceOf(Fix.Solved.class);
        assertThat(night.fix().agreements()).noneMatch(agreement -> agreement.contradictory());
        assertThat(night.fix().state().offset().minus(last.offset()).distance().arcminutes())
                .isLessThan(0.7);
        if (night.advice() instanceof Advice.TurnScrews turn) {
            for (ScrewTurn each : turn.turns()) {
                double ordered = each.screw() == ScrewTurn.Which.AZIMUTH
                        ? last.ordered().azimuth()
                        : last.ordered().altitude();
                assertThat(Math.signum(each.clockwiseTurns())).isEqualTo(Math.signum(ordered));
            }
        }
    }

    private int followOrdersUntilGood() {
        int frameCount = 0;
        do {
            followOrders();
            frameCount++;
        } while (!followed.orElseThrow().goodEnough() && frameCount < 20);
        return frameCount;
    }

    @ParameterizedTest
    @CsvSource({
        "-0.75, -1.25, 1",
        "-1.25, -0.75, 2",
        "-0.75, -0.75, 3",
        "-1.25, -1.25, 4",
        "-1, 1, 5",
        "0.75, -1.25, 6",
        "1.25, 0.75, 7",
        "1, 1, 8"
    })
    void anyScrewSense_framesLeadToClampingAndAStop(double azimuth, double altitude, long seed) {
        begin(azimuth, altitude, seed);
        findTheAxis();
        followOrders();
        WatchStep.ScrewsFollowed first = followed.orElseThrow();
        // The axis is right of the pole and low, so the orders are left and up.
        assertThat(first.azimuthWentWrong())
                .isEqualTo(azimuth < 0 ? Optional.of(FollowedScrews.WrongWay.RIGHT) : Optional.empty());
        assertThat(first.altitudeWentWrong())
                .isEqualTo(altitude < 0 ? Optional.of(FollowedScrews.WrongWay.DOWN) : Optional.empty());
        assertThat(WatchWords.notes(first))
                .filteredOn(note -> note.startsWith("Azimuth went"))
                .isEqualTo(azimuth < 0 ? List.of("Azimuth went right. Turn the other way.") : List.of());
        assertThat(night().fix().rig().azimuthScrew().clockwise())
                .isEqualTo(azimuth < 0 ? ScrewSense.LEFT : ScrewSense.RIGHT);
        assertThat(night().fix().rig().altitudeScrew().clockwise())
                .isEqualTo(altitude < 0 ? ScrewSense.LOWERS : ScrewSense.RAISES);
        assertThat(first.isSenseAssumed()).isFalse();

        int frameCount = 1 + followOrdersUntilGood();
        assertThat(frameCount).isLessThanOrEqualTo(7);
        assertThat(60 * offDeg()).isLessThan(5);
        assertThat(farthestDeg).isLessThan(firstDeg + 0.35);
        assertThat(night().fix().state().gains().azimuthFactor()).isCloseTo(Math.abs(azimuth), within(0.15));
        assertThat(night().fix().state().gains().altitudeFactor()).isCloseTo(Math.abs(altitude), within(0.15));

        assertThat(night().advice()).isInstanceOf(Advice.Clamp.class);
        person.good("clamp");
        int before = events().size();
        wedge.advance(Duration.ofSeconds(40));
        addFrame(wedge.frame());
        assertThat(events()).hasSize(before + 1);
        assertThat(night().advice()).isInstanceOf(Advice.Stop.class);
    }

    /** The hand turns continuously, with a frame every three seconds: nothing is logged until the axis rests. */
    @Test
    void whileTheScrewsTurn_theLogWaitsForTheAxisToRest() {
        begin(-0.75, 1.25, 9);
        findTheAxis();
        addFrame(nextFrame());
        int before = events().size();
        double direction = Math.signum(order().azimuth());
        for (int i = 0; i < 5; i++) {
            wedge.turn(direction * 0.3, 0);
            addFrame(nextFrame());
            assertThat(followed.orElseThrow().azimuthWentWrong()).contains(FollowedScrews.WrongWay.RIGHT);
            assertThat(Math.signum(order().azimuth())).isEqualTo(-direction);
        }
        assertThat(events()).hasSize(before);
        addFrame(nextFrame());
        assertThat(events()).hasSize(before + 2);
        NightEvent.ScrewsTurned turned =
                (NightEvent.ScrewsTurned) events().get(before).event();
        assertThat(turned.azimuthTurns()).isCloseTo(direction * 1.5 * 0.75, within(0.25));
        assertThat(turned.altitudeTurns()).isZero();
        assertThat(turned.isSeenByFrames()).isTrue();
        assertLogAgrees();
        assertThat(night().fix().rig().azimuthScrew().clockwise()).isEqualTo(ScrewSense.LEFT);
        // The result of the last move remains valid while the axis rests.
        assertThat(followed.orElseThrow().azimuthWentWrong()).contains(FollowedScrews.WrongWay.RIGHT);
    }

    private CameraAttitude nextFrame() {
        wedge.advance(Duration.ofSeconds(3));
        return wedge.frame();
    }

    /** A turn entered while frames are followed counts as entered; the next frame only measures its effect. */
    @Test
    void turnEnteredDuringTheWatch_countsOnce() {
        begin(-0.75, 1, 10);
        findTheAxis();
        person.good("turn", "--azimuth", "1 ccw", "--altitude", "1/2 cw");
        turnAndTakeFrame(-1, 0.5);
        assertThat(events()).hasSize(4);
        assertThat(night().fix().rig().azimuthScrew().clockwise()).isEqualTo(ScrewSense.LEFT);
        assertThat(order().azimuth()).isPositive();
        assertThat(night().fix().state().gains().azimuthFactor()).isCloseTo(0.75, within(0.1));
    }

    /** The same turn entered after the frames have seen it: it replaces the turn logged from the frames. */
    @Test
    void turnEnteredAfterTheFramesSawIt_replacesTheirs() {
        begin(-0.75, 1, 11);
        findTheAxis();
        turnAndTakeFrame(-1, 0.5);
        assertThat(events()).hasSize(4);
        person.good("turn", "--azimuth", "1 ccw", "--altitude", "1/2 cw");
        wedge.advance(Duration.ofSeconds(40));
        addFrame(wedge.frame());
        assertLogAgrees();
        assertThat(night().standing().stream()
                        .map(LoggedEvent::event)
                        .filter(NightEvent.ScrewsTurned.class::isInstance))
                .containsExactly(new NightEvent.ScrewsTurned(-1, 0.5));
        assertThat(watchEvents).anyMatch(WatchEvent.Noted.class::isInstance);
    }

    /** The user corrects the rig rather than the screws: the correction counts from the next frame. */
    @Test
    void rigCorrectedDuringTheWatch_reversesTheOrders() {
        begin(-1, 1, 16);
        findTheAxis();
        double before = order().azimuth();
        person.good("rig", "correct", "--azimuth-clockwise", "left");
        wedge.advance(Duration.ofSeconds(40));
        addFrame(wedge.frame());
        assertThat(Math.signum(order().azimuth())).isEqualTo(-Math.signum(before));
        followOrdersUntilGood();
        assertThat(60 * farthestDeg).isLessThan(60 * firstDeg + 1);
    }

    /** At the start and after clamping, both the watch and {@code next} ask for frames. */
    @Test
    void afterClamping_framesAreAdvised() {
        begin(1, 1, 17);
        findTheAxis();
        followOrdersUntilGood();
        person.good("clamp");
        assertThat(person.good("next").out()).contains("frame").doesNotContain("drift");
        assertThat(night().advice())
                .isInstanceOfSatisfying(
                        Advice.TakeSighting.class,
                        take -> assertThat(take.kind()).isEqualTo(SightingKind.FRAMES));
    }

    /** Two good sets of frames, and between them a turn that was ordered and logged, on a reversed screw. */
    @ParameterizedTest
    @CsvSource({"false, 18", "false, 19", "true, 20", "true, 21"})
    void reversedTurnBetweenTwoGoodSetsOfFrames_neverLeadsToAWrongOrder(boolean isRigDescribed, long seed)
            throws IOException {
        begin(-0.9, 1.1, seed, isRigDescribed ? new String[] {"--rig", describedRig()} : new String[0]);
        findTheAxis();
        person.good("turn", "--azimuth", "2 ccw", "--altitude", "1 cw");
        wedge.turn(-2, 1);
        wedge.advance(Duration.ofMinutes(2));
        startWatching();
        wedge.turnedFrames().forEach(this::addFrame);
        NightState night = night();
        if (isRigDescribed) {
            // One turn contradicts the rig: it is named, and the next one shows whether hand or screw was wrong.
            assertThat(((Fix.Dubious) night.fix()).reason()).contains("#3");
        }
        assertThat(night.fix().agreements()).hasSize(2).noneMatch(agreement -> agreement.contradictory());
        assertThat(night.fix().state().offset().distance().arcminutes()).isCloseTo(60 * offDeg(), within(0.7));
        Advice.TurnScrews turn = (Advice.TurnScrews) night.advice();
        // The axis is right of the pole: counter-clockwise would take it even farther.
        assertThat(turn.turns())
                .filteredOn(each -> each.screw() == ScrewTurn.Which.AZIMUTH)
                .allMatch(each -> each.clockwiseTurns() > 0 || turn.tests().contains(each.screw()));
    }

    private String describedRig() throws IOException {
        Path rig = folder.resolve("rig.json");
        String typical =
                new CommandRun(folder, "2026-11-25T20:00:00Z").good("rig").out();
        Files.writeString(rig, typical.replace("\"clockwise_assumed\" : true", "\"clockwise_assumed\" : false"));
        assertThat(rig).content().doesNotContain("true");
        return rig.toString();
    }

    @Test
    void afterABump_theAxisIsFoundAgain() {
        begin(1, 1, 12);
        findTheAxis();
        person.good("knock");
        wedge.advance(Duration.ofSeconds(40));
        List<WatchStep> listener = new ArrayList<>();
        session.add(wedge.frame(), listener::add);
        assertThat(listener).containsExactly(new WatchStep.Placed(1));
    }

    /** A slew of some degrees, away from the meridian, is not a turn of the screws, however small it is. */
    @ParameterizedTest
    @CsvSource({"2", "-5", "0.5", "9"})
    void slewInDeclination_isNotAScrewMove(double degrees) {
        begin(1, 1, 13);
        findTheAxis();
        wedge.slew(degrees);
        wedge.advance(Duration.ofSeconds(40));
        List<WatchStep> listener = new ArrayList<>();
        session.add(wedge.frame(), listener::add);
        WatchStep.StartedAfresh afresh = (WatchStep.StartedAfresh) listener.get(0);
        assertThat(afresh.slew().orElseThrow().degrees()).isCloseTo(Math.abs(degrees), within(0.05));
        assertThat(events()).hasSize(2);
    }

    /** Right ascension may be turned together with the screws; that is not a slew. */
    @Test
    void rightAscensionTurnedWithTheScrews_isNotASlew() {
        begin(1, 1, 14);
        findTheAxis();
        wedge.swing(-20);
        followOrders();
        assertThat(followed).isPresent();
        assertThat(60 * offDeg())
                .isCloseTo(followed.orElseThrow().offset().distance().arcminutes(), within(0.6));
    }

    /** No order exceeds the travel of a wedge's screws; the excess is reported. */
    @Test
    void ordersNeverExceedTheScrewTravel() {
        begin(1, 1, 15);
        wedge = new ModelWedge(25, LATITUDE, AZIMUTH_PER_TURN, ALTITUDE_PER_TURN, 0, EVENING, 15);
        findTheAxis();
        turnAndTakeUncheckedFrame(-0.5);
        assertThat(followed.orElseThrow().remaining().azimuth()).isEqualTo(-20);
        assertThat(WatchWords.notes(followed.orElseThrow()))
                .anyMatch(note -> note.startsWith("The azimuth screw would need more turns than most wedges have"));
    }

    private void turnAndTakeUncheckedFrame(double azimuth) {
        wedge.turn(azimuth, 0);
        wedge.advance(Duration.ofSeconds(40));
        addFrame(wedge.frame());
    }
}
