package polewright.app.watch;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import polewright.axis.AxisOffset;
import polewright.axis.AxisPointing;
import polewright.axis.OffsetCovariance;
import polewright.axis.advice.Tightening;
import polewright.axis.allowance.Allowance;
import polewright.axis.camera.AttitudeBounds;
import polewright.axis.camera.AxisFromFrames;
import polewright.axis.camera.Drive;
import polewright.axis.camera.FrameFinding;
import polewright.axis.camera.ScrewsSoFar;
import polewright.axis.fix.AxisState;
import polewright.axis.fix.ScrewGains;
import polewright.axis.rig.Rig;
import polewright.axis.sighting.TurnedFrames;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.place.Site;

/**
 * Follows frames as they come: first while right ascension is turned, until they tell the axis; then while the screws are
 * turned. Holds what was seen so far; not safe for use by several threads.
 */
public final class TurningWatch {
    /** Right ascension turned by this tells the axis well enough to go on. */
    public static final Angle ENOUGH_TURN = Angle.ofDegrees(25);

    // Frames nearer than this show one place; by hand nobody turns so little on purpose.
    private static final Angle ANOTHER_PLACE = Angle.ofDegrees(8);
    // Seeing and a hand on the tube move a frame by less, and nobody turns a screw so little.
    private static final Angle SCREWS_MOVED = Angle.ofArcminutes(1);
    private static final double SIGMAS = 5;
    // A mount that was set down far off is brought toward the pole, however far that takes its axis.
    private static final Angle SET_UP_WITHIN = Angle.ofDegrees(15);

    private final Site site;
    private final Rig rig;
    private final ScrewGains gains;
    private final Tightening tightening;
    private final Drive drive;
    private List<CameraAttitude> places = List.of();
    private Optional<AxisFromFrames> found = Optional.empty();
    private Optional<CameraAttitude> afterScrews = Optional.empty();
    private boolean screwsMoved;

    /**
     * A watch at the start of a turn.
     *
     * @param gains what the screws do, as learned so far
     * @param drive what the drive does, if told
     */
    public TurningWatch(Site site, Rig rig, ScrewGains gains, Allowance allowance, Drive drive) {
        this.site = site;
        this.rig = rig;
        this.gains = gains;
        this.tightening = new Tightening(allowance, rig);
        this.drive = drive;
    }

    /** Goes on from frames that told the axis before. */
    public void goOnFrom(TurnedFrames frames) {
        places = frames.frames();
        afterScrews = frames.afterScrews();
        found = Optional.of(AxisFromFrames.of(site, frames.frames()));
    }

    /** The frames that tell the axis, if they do yet; with the last one after the screws were turned, if they were. */
    public Optional<TurnedFrames> sighting() {
        return found.map(axis -> new TurnedFrames(axis.frames(), afterScrews, drive));
    }

    /** Whether this watch saw the screws move the axis since it was found. */
    public boolean screwsMoved() {
        return screwsMoved;
    }

    /**
     * One more frame.
     *
     * @throws InputRefused when nothing can be made of it; the watch is as before
     */
    public WatchStep add(CameraAttitude frame) {
        AttitudeBounds.require(frame);
        return found.isEmpty() ? place(frame) : follow(found.get(), frame);
    }

    private WatchStep place(CameraAttitude frame) {
        List<CameraAttitude> all = new ArrayList<>(places);
        all.add(frame);
        all.sort(Comparator.comparing(CameraAttitude::at));
        // Before those of the same place are replaced: one of last night shows no place of tonight.
        List<CameraAttitude> lastNight = ofTheLastNight(all);
        if (!lastNight.contains(frame)) {
            throw new InputRefused(
                    "the frame was taken more than " + AxisFromFrames.ONE_NIGHT.toHours() + " hours before the others",
                    "check the time of exposure in its file; the frames since are kept");
        }
        List<CameraAttitude> tonight = lastNight.stream()
                .filter(other -> other.equals(frame)
                        || !(isSamePlace(other, frame) || other.at().equals(frame.at())))
                .toList();
        if (AxisFromFrames.largestTurnOf(tonight).compareTo(ENOUGH_TURN) < 0) {
            places = tonight;
            return lastNight.size() < all.size()
                    ? new WatchStep.StartedAfresh(Optional.empty(), Optional.empty())
                    : new WatchStep.Placed(places.size());
        }
        AxisFromFrames axis = AxisFromFrames.of(site, tonight);
        places = tonight;
        found = Optional.of(axis);
        return new WatchStep.AxisFound(axis);
    }

    /** Frames in order of exposure, without those before a gap that no night has. */
    private static List<CameraAttitude> ofTheLastNight(List<CameraAttitude> frames) {
        int first = 0;
        for (int i = 1; i < frames.size(); i++) {
            Duration gap =
                    Duration.between(frames.get(i - 1).at(), frames.get(i).at());
            first = gap.compareTo(AxisFromFrames.ONE_NIGHT) > 0 ? i : first;
        }
        return List.copyOf(frames.subList(first, frames.size()));
    }

    private WatchStep startAfresh(CameraAttitude frame, Optional<Angle> slew) {
        Optional<TurnedFrames> leftOff = screwsMoved ? sighting() : Optional.empty();
        places = List.of(frame);
        found = Optional.empty();
        afterScrews = Optional.empty();
        screwsMoved = false;
        return new WatchStep.StartedAfresh(slew, leftOff);
    }

    private WatchStep follow(AxisFromFrames axis, CameraAttitude frame) {
        Optional<AxisFromFrames> sharper = afterScrews.isPresent() ? Optional.empty() : sharpened(axis, frame);
        if (sharper.isPresent()) {
            found = sharper;
            return new WatchStep.AxisSharpened(sharper.get());
        }
        CameraAttitude last = axis.frames().get(axis.frames().size() - 1);
        if (Duration.between(last.at(), frame.at()).compareTo(ScrewsSoFar.LONGEST) > 0) {
            return startAfresh(frame, Optional.empty());
        }
        ScrewsSoFar soFar = ScrewsSoFar.of(axis, frame, drive, rig.levelSigma());
        Angle moved = soFar.now().axis().separation(axis.axis());
        if (isSlew(soFar)) {
            return startAfresh(frame, Optional.of(moved));
        }
        double sigma = Math.max(
                soFar.now().azimuthSigma().radians(),
                soFar.now().altitudeSigma().radians());
        boolean standsOut = moved.radians() > Math.max(SCREWS_MOVED.radians(), SIGMAS * sigma);
        boolean isLast = afterScrews.stream().allMatch(earlier -> frame.at().isAfter(earlier.at()));
        if (isLast && (afterScrews.isPresent() || standsOut)) {
            afterScrews = Optional.of(frame);
            screwsMoved = true;
        }
        AxisOffset offset = soFar.now().axis().offset(site);
        AxisState.Turns remaining =
                gains.turnsBetween(soFar.now().axis(), AxisPointing.of(site, tightening.goal()), rig);
        OffsetCovariance covariance =
                soFar.now().widenedBy(TurnedFrames.MOUNTS_OWN_GIVE).offsetCovariance(site);
        // The screws turn on loose clamps, and what they leave is what is tightened.
        boolean goodEnough = tightening.probability(offset, covariance) >= tightening.enough();
        return new WatchStep.ScrewsFollowed(soFar, offset.minus(axis.offset()), remaining, goodEnough);
    }

    /** Whether the axis would be farther from where it was, and from the pole, than screws take it. */
    private boolean isSlew(ScrewsSoFar soFar) {
        return soFar.findings().stream().anyMatch(finding -> finding instanceof FrameFinding.MovedTooFar)
                && soFar.now().axis().separation(AxisPointing.atPole(site)).compareTo(SET_UP_WITHIN) > 0;
    }

    /** The axis with this frame as one more place in right ascension, if that is what it is. */
    private Optional<AxisFromFrames> sharpened(AxisFromFrames axis, CameraAttitude frame) {
        if (axis.frames().size() >= AxisFromFrames.MOST_FRAMES
                || axis.frames().stream().anyMatch(earlier -> isSamePlace(earlier, frame))) {
            return Optional.empty();
        }
        List<CameraAttitude> more = new ArrayList<>(axis.frames());
        more.add(frame);
        try {
            AxisFromFrames with = AxisFromFrames.of(site, more);
            // A fork gives by more than its frames' own uncertainty as it turns; turned screws show in minutes of arc.
            boolean onlyRightAscension =
                    with.closes() || with.residuals().stream().allMatch(r -> r.compareTo(SCREWS_MOVED) < 0);
            return onlyRightAscension ? Optional.of(with) : Optional.empty();
        } catch (InputRefused refused) {
            return Optional.empty();
        }
    }

    /** Within half an hour the sky turns a tracking mount from its place too: both are taken for one place. */
    private static boolean isSamePlace(CameraAttitude earlier, CameraAttitude later) {
        return later.turnedSince(earlier).getNorm() < ANOTHER_PLACE.radians();
    }
}
