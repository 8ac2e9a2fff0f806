package polewright.rehearsal;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;
import polewright.axis.AxisPointing;
import polewright.axis.advice.ScrewTurn;
import polewright.axis.advice.Tightening;
import polewright.axis.allowance.Allowance;
import polewright.axis.camera.AxisFromFrames;
import polewright.axis.camera.Drive;
import polewright.axis.camera.ScrewsSoFar;
import polewright.axis.fix.AxisState;
import polewright.axis.fix.ScrewGains;
import polewright.sky.angle.Angle;
import polewright.sky.attitude.CameraAttitude;

/**
 * Someone who turns the screws with an eye on what each new frame says is left: first most of a long turn, then what is
 * left of it, then the other screw.
 */
final class TurningByFrames {
    private static final int MOST_LOOKS = 10;
    // Less is not worth another touch.
    private static final double GOOD_ENOUGH_TURNS = 0.1;
    // Nearer the aim than this share of what is tolerated no turn is worth it; the rest is for the clamps.
    private static final double NEAR_SHARE = 0.5;
    private static final double LONG_TURN = 1;
    private static final double SHARE_OF_A_LONG_TURN = 0.75;
    private static final int PARTS_OF_A_TURN = 16;

    private final CameraOnTube camera;
    private final CameraOnTube.Turned reference;
    private final AxisFromFrames found;
    private final ScrewGains gains;
    private final AxisPointing aim;
    private final Angle near;
    private final Duration turnAndLookTake;
    private final RandomGenerator random;
    private final List<Step> steps = new ArrayList<>();
    private HiddenWedge wedge;
    private Instant now;
    private AxisState.Turns left = new AxisState.Turns(0, 0);

    /**
     * A turn and the frame after it.
     *
     * @param wedge how it stands after the turn
     * @param frame what was seen
     * @param look what that tells
     */
    record Step(HiddenWedge wedge, CameraAttitude frame, LookWhileTurning look) {}

    /**
     * @param reference the frames that gave the axis, nothing but screws touched since
     * @param turnAndLookTake how long it takes to turn one screw and take a frame
     * @param gains what the screws are taken to do
     */
    TurningByFrames(
            CameraOnTube camera,
            CameraOnTube.Turned reference,
            HiddenWedge wedge,
            Instant now,
            Duration turnAndLookTake,
            ScrewGains gains,
            Allowance allowance,
            RandomGenerator random) {
        this.camera = camera;
        this.reference = reference;
        this.found = AxisFromFrames.of(wedge.site(), reference.attitudes());
        this.gains = gains;
        this.aim = AxisPointing.of(wedge.site(), new Tightening(allowance, wedge.rig()).goal());
        this.near = allowance.depth().times(NEAR_SHARE);
        this.turnAndLookTake = turnAndLookTake;
        this.random = random;
        this.wedge = wedge;
        this.now = now;
    }

    /** Turns as advised, each screw until the frames say that it is done, or that both are; one turn at least. */
    List<Step> turn(List<ScrewTurn> advised) {
        for (ScrewTurn turn : advised) {
            if (isNear()) {
                break;
            }
            // Once there has been a look, it knows better than the advice did.
            double toGo = steps.isEmpty() ? turn.clockwiseTurns() : leftOf(turn.screw());
            turnAndLook(turn.screw(), Math.abs(toGo) > LONG_TURN ? toGo * SHARE_OF_A_LONG_TURN : toGo);
            if (Math.abs(leftOf(turn.screw())) >= GOOD_ENOUGH_TURNS && !isNear()) {
                turnAndLook(turn.screw(), leftOf(turn.screw()));
            }
        }
        // A leaning base lets one screw take the axis the other's way as well.
        while (steps.size() < MOST_LOOKS && !isNear() && Math.abs(leftOf(most())) >= GOOD_ENOUGH_TURNS) {
            turnAndLook(most(), leftOf(most()));
        }
        return List.copyOf(steps);
    }

    private boolean isNear() {
        return !steps.isEmpty()
                && steps.get(steps.size() - 1)
                                .look()
                                .soFar()
                                .now()
                                .axis()
                                .separation(aim)
                                .compareTo(near)
                        <= 0;
    }

    private void turnAndLook(ScrewTurn.Which screw, double toGo) {
        double turns = Math.rint(toGo * PARTS_OF_A_TURN) / PARTS_OF_A_TURN;
        if (turns == 0) {
            return;
        }
        boolean azimuth = screw == ScrewTurn.Which.AZIMUTH;
        wedge = wedge.turned(azimuth ? turns : 0, azimuth ? 0 : turns, random);
        now = now.plus(turnAndLookTake);
        CameraAttitude frame = camera.again(reference.fork(), wedge, now);
        ScrewsSoFar soFar =
                ScrewsSoFar.of(found, frame, Drive.STANDING, wedge.rig().levelSigma());
        left = gains.turnsBetween(soFar.now().axis(), aim, wedge.rig());
        steps.add(new Step(wedge, frame, new LookWhileTurning(now, new ScrewTurn(screw, turns), soFar, left)));
    }

    private double leftOf(ScrewTurn.Which screw) {
        return screw == ScrewTurn.Which.AZIMUTH ? left.azimuth() : left.altitude();
    }

    private ScrewTurn.Which most() {
        return Math.abs(left.azimuth()) > Math.abs(left.altitude())
                ? ScrewTurn.Which.AZIMUTH
                : ScrewTurn.Which.ALTITUDE;
    }
}
