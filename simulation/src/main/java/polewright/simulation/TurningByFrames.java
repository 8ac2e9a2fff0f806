package polewright.simulation;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.random.RandomGenerator;
import polewright.alignment.advice.FollowedScrews;
import polewright.alignment.advice.ScrewTurn;
import polewright.alignment.camera.AxisFromFrames;
import polewright.alignment.camera.Drive;
import polewright.alignment.camera.ScrewProgress;
import polewright.alignment.sighting.TurnedFrames;
import polewright.session.NightState;
import polewright.sky.attitude.CameraAttitude;

/**
 * An observer who turns the screws guided by each new frame, as {@link FollowedScrews} advises: one order, carried
 * out in one go, then a frame, which is logged as it comes.
 */
final class TurningByFrames {
    private static final int MOST_LOOKS = 15;
    // Less is not worth another turn.
    private static final double GOOD_ENOUGH_TURNS = 0.1;
    private static final int PARTS_OF_A_TURN = 16;

    private final CameraOnTube camera;
    private final CameraOnTube.Turned reference;
    private final AxisFromFrames found;
    private final Duration turnAndLookTake;
    private final Function<Step, NightState> log;
    private final RandomGenerator random;
    private HiddenWedge wedge;
    private Instant now;
    private FollowedScrews screws;
    private boolean isGoodEnough;
    private double lastAzimuth;
    private double lastAltitude;

    /**
     * A turn and the frame after it.
     *
     * @param wedge its true state after the turn
     * @param frame the attitude measured
     * @param look the result of the frame
     * @param made what was turned since the last logged turn, according to the frames; empty if no turns of the
     *     screws explain it
     * @param isLast whether nothing more is to be turned now
     */
    record Step(
            HiddenWedge wedge,
            CameraAttitude frame,
            FrameWhileTurning look,
            Optional<FollowedScrews.Made> made,
            boolean isLast) {}

    /**
     * @param reference the frames that gave the axis; only screws touched since
     * @param last the last frame, if that was taken after screws were turned
     * @param now when the first screw is turned
     * @param turnAndLookTake how long it takes to turn one screw and take a frame
     * @param night so far
     * @param log receives the result of a frame and returns the night including it
     */
    TurningByFrames(
            CameraOnTube camera,
            CameraOnTube.Turned reference,
            Optional<CameraAttitude> last,
            HiddenWedge wedge,
            Instant now,
            Duration turnAndLookTake,
            NightState night,
            Function<Step, NightState> log,
            RandomGenerator random) {
        this.camera = camera;
        this.reference = reference;
        this.found = AxisFromFrames.of(wedge.site(), reference.attitudes());
        this.turnAndLookTake = turnAndLookTake;
        this.log = log;
        this.random = random;
        this.wedge = wedge;
        this.now = now;
        this.screws = FollowedScrews.of(
                wedge.site(),
                FollowedScrews.Known.of(night.fix()),
                night.allowance(),
                last.map(found::followedTo).orElseGet(found::estimate).axis(),
                last.orElseGet(() ->
                                reference.attitudes().get(reference.attitudes().size() - 1))
                        .at());
    }

    /** The current true state of the wedge. */
    HiddenWedge wedge() {
        return wedge;
    }

    /**
     * Makes the first of the advised turns, and then what each frame advises, until one shows that no further turn is
     * needed.
     */
    void turn(List<ScrewTurn> advised) {
        turnAndLook(advised.get(0).screw(), advised.get(0).clockwiseTurns(), false);
        for (int looks = 1; looks < MOST_LOOKS && isMoreToTurn(); looks++) {
            boolean azimuth = Math.abs(screws.orders().azimuth().clockwiseTurns())
                    > Math.abs(screws.orders().altitude().clockwiseTurns());
            FollowedScrews.Order order =
                    azimuth ? screws.orders().azimuth() : screws.orders().altitude();
            double last = azimuth ? lastAzimuth : lastAltitude;
            turnAndLook(
                    azimuth ? ScrewTurn.Which.AZIMUTH : ScrewTurn.Which.ALTITUDE,
                    order.isWayUnknown() ? Math.copySign(order.clockwiseTurns(), -last) : order.clockwiseTurns(),
                    looks == MOST_LOOKS - 1);
        }
    }

    private boolean isMoreToTurn() {
        FollowedScrews.Orders orders = screws.orders();
        return !isGoodEnough
                && Math.max(
                                Math.abs(orders.azimuth().clockwiseTurns()),
                                Math.abs(orders.altitude().clockwiseTurns()))
                        >= GOOD_ENOUGH_TURNS;
    }

    private void turnAndLook(ScrewTurn.Which screw, double ordered, boolean isLast) {
        double turns = Math.rint(ordered * PARTS_OF_A_TURN) / PARTS_OF_A_TURN;
        boolean azimuth = screw == ScrewTurn.Which.AZIMUTH;
        wedge = wedge.turned(azimuth ? turns : 0, azimuth ? 0 : turns, random);
        lastAzimuth = azimuth ? turns : lastAzimuth;
        lastAltitude = azimuth ? lastAltitude : turns;
        now = now.plus(turnAndLookTake);
        CameraAttitude frame = camera.anotherFrame(reference.fork(), wedge, now);
        ScrewProgress soFar =
                ScrewProgress.of(found, frame, Drive.STANDING, wedge.rig().levelSigma());
        screws = screws.seeing(soFar.now().axis(), found.movementSigma(frame), now);
        isGoodEnough = screws.tightening()
                .isEnough(
                        soFar.now().axis().offset(wedge.site()),
                        soFar.now().widenedBy(TurnedFrames.MOUNT_FLEXURE).offsetCovariance(wedge.site()));
        boolean isOver = isLast || !isMoreToTurn();
        if (screws.isToLog() || isOver) {
            FrameWhileTurning look = new FrameWhileTurning(now, new ScrewTurn(screw, turns), soFar, screws);
            NightState night = log.apply(new Step(wedge, frame, look, screws.made(), isOver));
            screws = screws.logged(FollowedScrews.Known.of(night.fix()));
        }
    }
}
