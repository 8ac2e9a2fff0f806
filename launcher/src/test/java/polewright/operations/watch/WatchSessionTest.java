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

/** Someone obeys what each frame says, on a wedge whose screws go otherwise than anybody told. */
@SuppressWarnings("NullAway.Init") // Each test begins a night with a wedge of its own.
class WatchSessionTest {
    private static final double LATITUDE = 54.60;
    private static final Instant EVENING = Instant.parse("2026-11-25T20:00:00Z");
    // What a screw of 1.25 mm pitch does 200 and 180 mm from its pivot, as is assumed where no rig was told.
    private static final double AZIMUTH_PER_TURN = Math.toDegrees(Math.atan(1.25 / 200));
    private static final double ALTITUDE_PER_TURN = Math.toDegrees(Math.atan(1.25 / 180));

    @TempDir
    private Path folder;

    private CommandRun person;
    private ModelWedge wedge;
    private WatchSession session;
    private TurningWatch watch;
    private final List<WatchEvent> heard = new ArrayList<>();
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
                watch, WatchLog.ofTonight(bench, () -> NightLog.open(person.log()), Optional.empty()), heard::add);
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
        wedge.turnedFrames().forEach(this::add);
        assertThat(events()).hasSize(2);
    }

    private void add(CameraAttitude frame) {
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

    /** Turns both screws as was ordered, and takes a frame. */
    private void obey() {
        AxisState.Turns order = order();
        turnAndLook(order.azimuth(), order.altitude());
    }

    private void turnAndLook(double azimuth, double altitude) {
        wedge.turn(azimuth, altitude);
        farthestDeg = Math.max(farthestDeg, offDeg());
        wedge.waiting(Duration.ofSeconds(40));
        add(wedge.frame());
        assertThatTheLogAgrees();
    }

    /** What the log's fix says after a frame is what the frame said, and turns advised go the way that it ordered. */
    private void assertThatTheLogAgrees() {
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

    private int obeyUntilGood() {
        int looks = 0;
        do {
            obey();
            looks++;
        } while (!followed.orElseThrow().goodEnough() && looks < 20);
        return looks;
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
    void onScrewsThatGoEitherWay_framesLeadToTheClampsAndToAStop(double azimuth, double altitude, long seed) {
        begin(azimuth, altitude, seed);
        findTheAxis();
        obey();
        WatchStep.ScrewsFollowed first = followed.orElseThrow();
        // Axis to the right of the pole and low: it was to go left and up.
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

        int looks = 1 + obeyUntilGood();
        assertThat(looks).isLessThanOrEqualTo(7);
        assertThat(60 * offDeg()).isLessThan(5);
        assertThat(farthestDeg).isLessThan(firstDeg + 0.35);
        assertThat(night().fix().state().gains().azimuthFactor()).isCloseTo(Math.abs(azimuth), within(0.15));
        assertThat(night().fix().state().gains().altitudeFactor()).isCloseTo(Math.abs(altitude), within(0.15));

        assertThat(night().advice()).isInstanceOf(Advice.Clamp.class);
        person.good("clamp");
        int before = events().size();
        wedge.waiting(Duration.ofSeconds(40));
        add(wedge.frame());
        assertThat(events()).hasSize(before + 1);
        assertThat(night().advice()).isInstanceOf(Advice.Stop.class);
    }

    /** A hand that turns all the time, frames every three seconds: nothing is logged on the way, and all at rest. */
    @Test
    void whileTheHandIsTurning_theLogWaitsForTheAxisToRest() {
        begin(-0.75, 1.25, 9);
        findTheAxis();
        add(later());
        int before = events().size();
        double way = Math.signum(order().azimuth());
        for (int i = 0; i < 5; i++) {
            wedge.turn(way * 0.3, 0);
            add(later());
            assertThat(followed.orElseThrow().azimuthWentWrong()).contains(FollowedScrews.WrongWay.RIGHT);
            assertThat(Math.signum(order().azimuth())).isEqualTo(-way);
        }
        assertThat(events()).hasSize(before);
        add(later());
        assertThat(events()).hasSize(before + 2);
        NightEvent.ScrewsTurned turned =
                (NightEvent.ScrewsTurned) events().get(before).event();
        assertThat(turned.azimuthTurns()).isCloseTo(way * 1.5 * 0.75, within(0.25));
        assertThat(turned.altitudeTurns()).isZero();
        assertThat(turned.isSeenByFrames()).isTrue();
        assertThatTheLogAgrees();
        assertThat(night().fix().rig().azimuthScrew().clockwise()).isEqualTo(ScrewSense.LEFT);
        // What was said of the last move still stands while the axis rests.
        assertThat(followed.orElseThrow().azimuthWentWrong()).contains(FollowedScrews.WrongWay.RIGHT);
    }

    private CameraAttitude later() {
        wedge.waiting(Duration.ofSeconds(3));
        return wedge.frame();
    }

    /** A turn that is typed while frames are followed counts as typed, and the next frame only sees what came of it. */
    @Test
    void turnTypedBesideTheWatch_countsOnce() {
        begin(-0.75, 1, 10);
        findTheAxis();
        person.good("turn", "--azimuth", "1 ccw", "--altitude", "1/2 cw");
        turnAndLook(-1, 0.5);
        assertThat(events()).hasSize(4);
        assertThat(night().fix().rig().azimuthScrew().clockwise()).isEqualTo(ScrewSense.LEFT);
        assertThat(order().azimuth()).isPositive();
        assertThat(night().fix().state().gains().azimuthFactor()).isCloseTo(0.75, within(0.1));
    }

    /** The same turn typed after the frames have seen it: it takes the place of theirs. */
    @Test
    void turnTypedAfterTheFramesSawIt_takesThePlaceOfTheirs() {
        begin(-0.75, 1, 11);
        findTheAxis();
        turnAndLook(-1, 0.5);
        assertThat(events()).hasSize(4);
        person.good("turn", "--azimuth", "1 ccw", "--altitude", "1/2 cw");
        wedge.waiting(Duration.ofSeconds(40));
        add(wedge.frame());
        assertThatTheLogAgrees();
        assertThat(night().standing().stream()
                        .map(LoggedEvent::event)
                        .filter(NightEvent.ScrewsTurned.class::isInstance))
                .containsExactly(new NightEvent.ScrewsTurned(-1, 0.5));
        assertThat(heard).anyMatch(WatchEvent.Noted.class::isInstance);
    }

    /** Someone who finds out looks at the rig, not at the screws: what is corrected counts at the next frame. */
    @Test
    void rigCorrectedBesideTheWatch_turnsTheOrdersRound() {
        begin(-1, 1, 16);
        findTheAxis();
        double before = order().azimuth();
        person.good("rig", "correct", "--azimuth-clockwise", "left");
        wedge.waiting(Duration.ofSeconds(40));
        add(wedge.frame());
        assertThat(Math.signum(order().azimuth())).isEqualTo(-Math.signum(before));
        obeyUntilGood();
        assertThat(60 * farthestDeg).isLessThan(60 * firstDeg + 1);
    }

    /** At the start and after clamping, both the watch and {@code next} ask for frames. */
    @Test
    void whereFramesTell_framesAreAskedFor() {
        begin(1, 1, 17);
        findTheAxis();
        obeyUntilGood();
        person.good("clamp");
        assertThat(person.good("next").out()).contains("frame").doesNotContain("drift");
        assertThat(night().advice())
                .isInstanceOfSatisfying(
                        Advice.TakeSighting.class,
                        take -> assertThat(take.kind()).isEqualTo(SightingKind.FRAMES));
    }

    /** Two good sets of frames, and between them a turn as it was ordered and logged, on a screw that goes the other way. */
    @ParameterizedTest
    @CsvSource({"false, 18", "false, 19", "true, 20", "true, 21"})
    void turnThatWentTheOtherWayBetweenTwoGoodSetsOfFrames_neverLeadsToAWrongOrder(boolean isRigTold, long seed)
            throws IOException {
        begin(-0.9, 1.1, seed, isRigTold ? new String[] {"--rig", toldRig()} : new String[0]);
        findTheAxis();
        person.good("turn", "--azimuth", "2 ccw", "--altitude", "1 cw");
        wedge.turn(-2, 1);
        wedge.waiting(Duration.ofMinutes(2));
        startWatching();
        wedge.turnedFrames().forEach(this::add);
        NightState night = night();
        if (isRigTold) {
            // One turn against the word of its owner: the turn is named, and whether hand or screw, the next one tells.
            assertThat(((Fix.Dubious) night.fix()).reason()).contains("#3");
        }
        assertThat(night.fix().agreements()).hasSize(2).noneMatch(agreement -> agreement.contradictory());
        assertThat(night.fix().state().offset().distance().arcminutes()).isCloseTo(60 * offDeg(), within(0.7));
        Advice.TurnScrews turn = (Advice.TurnScrews) night.advice();
        // Axis to the right of the pole: counter-clockwise would take it still farther.
        assertThat(turn.turns())
                .filteredOn(each -> each.screw() == ScrewTurn.Which.AZIMUTH)
                .allMatch(each -> each.clockwiseTurns() > 0 || turn.tests().contains(each.screw()));
    }

    private String toldRig() throws IOException {
        Path rig = folder.resolve("rig.json");
        String typical =
                new CommandRun(folder, "2026-11-25T20:00:00Z").good("rig").out();
        Files.writeString(rig, typical.replace("\"clockwise_assumed\" : true", "\"clockwise_assumed\" : false"));
        assertThat(rig).content().doesNotContain("true");
        return rig.toString();
    }

    @Test
    void afterAKnock_theAxisIsFoundAgain() {
        begin(1, 1, 12);
        findTheAxis();
        person.good("knock");
        wedge.waiting(Duration.ofSeconds(40));
        List<WatchStep> listener = new ArrayList<>();
        session.add(wedge.frame(), listener::add);
        assertThat(listener).containsExactly(new WatchStep.Placed(1));
    }

    /** A slew of some degrees, away from the meridian, is no turn of the screws, however small it is. */
    @ParameterizedTest
    @CsvSource({"2", "-5", "0.5", "9"})
    void slewInDeclination_isNoMoveOfTheScrews(double degrees) {
        begin(1, 1, 13);
        findTheAxis();
        wedge.slew(degrees);
        wedge.waiting(Duration.ofSeconds(40));
        List<WatchStep> listener = new ArrayList<>();
        session.add(wedge.frame(), listener::add);
        WatchStep.StartedAfresh afresh = (WatchStep.StartedAfresh) listener.get(0);
        assertThat(afresh.slew().orElseThrow().degrees()).isCloseTo(Math.abs(degrees), within(0.05));
        assertThat(events()).hasSize(2);
    }

    /** Right ascension may be turned along with the screws: that is no slew. */
    @Test
    void rightAscensionTurnedAlongWithTheScrews_isNoSlew() {
        begin(1, 1, 14);
        findTheAxis();
        wedge.swing(-20);
        obey();
        assertThat(followed).isPresent();
        assertThat(60 * offDeg())
                .isCloseTo(followed.orElseThrow().offset().distance().arcminutes(), within(0.6));
    }

    /** No order is longer than a wedge's screws, and then it is said. */
    @Test
    void moreTurnsThanAWedgeHas_areNeverOrdered() {
        begin(1, 1, 15);
        wedge = new ModelWedge(25, LATITUDE, AZIMUTH_PER_TURN, ALTITUDE_PER_TURN, 0, EVENING, 15);
        findTheAxis();
        turnAndLookOnly(-0.5);
        assertThat(followed.orElseThrow().remaining().azimuth()).isEqualTo(-20);
        assertThat(WatchWords.notes(followed.orElseThrow()))
                .anyMatch(note -> note.startsWith("The azimuth screw would need more turns than most wedges have"));
    }

    private void turnAndLookOnly(double azimuth) {
        wedge.turn(azimuth, 0);
        wedge.waiting(Duration.ofSeconds(40));
        add(wedge.frame());
    }
}
