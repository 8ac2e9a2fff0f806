package polewright.operations.watch;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import polewright.alignment.advice.FollowedScrews;
import polewright.alignment.allowance.Allowance;
import polewright.alignment.camera.AttitudeBounds;
import polewright.alignment.camera.AxisFromFrames;
import polewright.alignment.camera.Drive;
import polewright.alignment.camera.ScrewProgress;
import polewright.alignment.camera.Slew;
import polewright.alignment.sighting.TurnedFrames;
import polewright.mount.AxisOffset;
import polewright.mount.AxisPointing;
import polewright.mount.OffsetCovariance;
import polewright.mount.rig.HandTurns;
import polewright.mount.rig.Rig;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.place.Site;

/**
 * Follows frames as they come: first while right ascension is turned, until they give the axis; then while the screws
 * are turned. Keeps what was seen so far; not thread-safe.
 */
public final class TurningWatch {
    /** A turn in right ascension by this much gives the axis accurately enough to continue. */
    public static final Angle ENOUGH_TURN = Angle.ofDegrees(25);

    // Frames nearer to each other than this show the same place; a deliberate turn by hand is larger.
    private static final Angle ANOTHER_PLACE = Angle.ofDegrees(8);
    // The flexure of a turning fork is smaller.
    private static final Angle SCREWS_MOVED = Angle.ofArcminutes(1);
    // A mount that was set down far off is brought toward the pole, however far that moves its axis.
    private static final Angle MOST_SETUP_OFFSET = Angle.ofDegrees(15);

    private final Site site;
    private FollowedScrews.Known known;
    private final Allowance allowance;
    private final Drive drive;
    private List<CameraAttitude> places = List.of();
    private Optional<AxisFromFrames> found = Optional.empty();
    private Optional<CameraAttitude> afterScrews = Optional.empty();
    private Optional<FollowedScrews> screws = Optional.empty();
    private Optional<ScrewProgress> soFar = Optional.empty();
    private Optional<CameraAttitude> lastFrame = Optional.empty();

    /**
     * A watch at the start of the turning.
     *
     * @param known what is known about the screws so far
     * @param drive what the drive does, if given
     */
    public TurningWatch(Site site, FollowedScrews.Known known, Allowance allowance, Drive drive) {
        this.site = site;
        this.known = known;
        this.allowance = allowance;
        this.drive = drive;
    }

    /** Continues from earlier frames that gave the axis. */
    public void continueFrom(TurnedFrames frames) {
        places = frames.frames();
        afterScrews = frames.afterScrews();
        AxisFromFrames axis = AxisFromFrames.of(site, frames.frames());
        found = Optional.of(axis);
        AxisPointing now =
                afterScrews.map(axis::followedTo).orElseGet(axis::estimate).axis();
        CameraAttitude last = afterScrews.orElseGet(() -> lastOf(axis));
        screws = Optional.of(FollowedScrews.of(site, known, allowance, now, last.at()));
    }

    /**
     * The frames that give the axis, once they do; including the last one after the screws were turned, if they were.
     */
    public Optional<TurnedFrames> sighting() {
        return found.map(axis -> new TurnedFrames(axis.frames(), afterScrews, drive));
    }

    /** What the screws have done since the axis was found; empty before. */
    public Optional<FollowedScrews> screws() {
        return screws;
    }

    /** Whether the screws have moved the axis since it was last logged. */
    public boolean screwsMoved() {
        return screws.filter(FollowedScrews::hasMoved).isPresent();
    }

    /** Whether they have, and the axis has come to rest. */
    public boolean isToLog() {
        return screws.filter(FollowedScrews::isToLog).isPresent();
    }

    /** Call when what was seen so far has been logged and the night has learned this about the screws. */
    public void logged(FollowedScrews.Known learned) {
        known = learned;
        afterScrews = lastFrame.or(() -> afterScrews);
        screws = screws.map(seen -> seen.logged(learned));
    }

    /**
     * Call when the rig or earlier events were corrected: what is known about the screws changes, and what frames
     * have seen since is kept.
     */
    public void relearned(FollowedScrews.Known learned) {
        known = learned;
        screws = screws.map(seen -> seen.relearned(learned));
    }

    public Site site() {
        return site;
    }

    /** Call when turns counted by hand have been logged. */
    public void counted(HandTurns azimuth, HandTurns altitude) {
        screws = screws.map(seen -> seen.counted(azimuth, altitude));
    }

    /**
     * What the last frame showed of the screws, with what has been learned since; empty while none has been followed.
     */
    public Optional<WatchStep.ScrewsFollowed> followed() {
        return soFar.flatMap(last -> screws.flatMap(seen -> found.map(axis -> followed(axis, last, seen))));
    }

    /**
     * Adds one more frame.
     *
     * @throws InputRefused when it cannot be used; the watch is unchanged
     */
    public WatchStep add(CameraAttitude frame) {
        AttitudeBounds.require(frame);
        return found.isEmpty() ? place(frame) : follow(found.get(), frame);
    }

    private WatchStep place(CameraAttitude frame) {
        List<CameraAttitude> all = new ArrayList<>(places);
        all.add(frame);
        all.sort(Comparator.comparing(CameraAttitude::at));
        // Before frames of the same place are replaced: a frame of last night is no place of tonight.
        List<CameraAttitude> lastNight = lastNightOnly(all);
        if (!lastNight.contains(frame)) {
            throw new InputRefused(
                    "the frame was taken more than " + AxisFromFrames.ONE_NIGHT.toHours() + " hours before the others",
                    "check the time of exposure in its file; later frames are still used");
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
        isFound(axis);
        return new WatchStep.AxisFound(axis);
    }

    /** The frames in order of exposure, without those before a gap longer than any within a night. */
    private static List<CameraAttitude> lastNightOnly(List<CameraAttitude> frames) {
        int first = 0;
        for (int i = 1; i < frames.size(); i++) {
            Duration gap =
                    Duration.between(frames.get(i - 1).at(), frames.get(i).at());
            first = gap.compareTo(AxisFromFrames.ONE_NIGHT) > 0 ? i : first;
        }
        return List.copyOf(frames.subList(first, frames.size()));
    }

    private void isFound(AxisFromFrames axis) {
        found = Optional.of(axis);
        soFar = Optional.empty();
        lastFrame = Optional.empty();
        screws = Optional.of(FollowedScrews.of(
                site, known, allowance, axis.axis(), lastOf(axis).at()));
    }

    /** Discards the frames so far: the search for the axis starts again here. */
    public void startAfresh() {
        places = List.of();
        found = Optional.empty();
        afterScrews = Optional.empty();
        screws = Optional.empty();
        soFar = Optional.empty();
        lastFrame = Optional.empty();
    }

    private WatchStep startAfresh(CameraAttitude frame, Optional<Angle> slew) {
        Optional<WatchStep.LeftOff> leftOff = leftOff();
        startAfresh();
        places = List.of(frame);
        return new WatchStep.StartedAfresh(slew, leftOff);
    }

    /** Where the screws have moved the axis, if that is not in the log. */
    public Optional<WatchStep.LeftOff> leftOff() {
        return screwsMoved() ? seen() : Optional.empty();
    }

    /** Where the axis was in the last followed frame, whether it has moved or not. */
    public Optional<WatchStep.LeftOff> seen() {
        return found.flatMap(axis -> lastFrame.map(frame -> new WatchStep.LeftOff(
                new TurnedFrames(axis.frames(), Optional.of(frame), drive), screws.flatMap(FollowedScrews::made))));
    }

    private WatchStep follow(AxisFromFrames axis, CameraAttitude frame) {
        Optional<AxisFromFrames> sharper = afterScrews.isPresent() ? Optional.empty() : sharpened(axis, frame);
        if (sharper.isPresent()) {
            isFound(sharper.get());
            return new WatchStep.AxisSharpened(sharper.get());
        }
        if (Duration.between(lastOf(axis).at(), frame.at()).compareTo(ScrewProgress.LONGEST) > 0) {
            return startAfresh(frame, Optional.empty());
        }
        FollowedScrews before = screws.orElseThrow();
        Rig rig = before.tightening().rig();
        ScrewProgress now = ScrewProgress.of(axis, frame, drive, rig.levelSigma());
        Optional<Angle> slew = slew(axis, before.axis(), now, frame, rig);
        if (slew.isPresent()) {
            return startAfresh(frame, slew);
        }
        boolean isLast = afterScrews.stream().allMatch(earlier -> frame.at().isAfter(earlier.at()));
        if (!isLast) {
            return followed(axis, now, before);
        }
        FollowedScrews seen = before.seeing(now.now().axis(), axis.movementSigma(frame), frame.at());
        screws = Optional.of(seen);
        soFar = Optional.of(now);
        lastFrame = Optional.of(frame);
        if (afterScrews.isPresent() || seen.hasMoved()) {
            afterScrews = Optional.of(frame);
        }
        return followed(axis, now, seen);
    }

    private WatchStep.ScrewsFollowed followed(AxisFromFrames axis, ScrewProgress now, FollowedScrews seen) {
        AxisOffset offset = now.now().axis().offset(site);
        OffsetCovariance covariance =
                now.now().widenedBy(TurnedFrames.MOUNT_FLEXURE).offsetCovariance(site);
        // The screws are turned with loose clamps, and the result has to survive the clamping.
        boolean goodEnough = seen.tightening().isEnough(offset, covariance);
        return new WatchStep.ScrewsFollowed(
                now,
                offset,
                offset.minus(axis.offset()),
                seen.orders(),
                seen.azimuthWentWrong(),
                seen.altitudeWentWrong(),
                seen.isSenseAssumed(),
                goodEnough);
    }

    /**
     * How far the mount was slewed, if it was: in declination, or away from the pole by more than screws move it at
     * once.
     */
    private Optional<Angle> slew(
            AxisFromFrames axis, AxisPointing before, ScrewProgress now, CameraAttitude frame, Rig rig) {
        CameraAttitude last = afterScrews.orElseGet(() -> lastOf(axis));
        if (!frame.at().isAfter(last.at())) {
            return Optional.empty();
        }
        Angle moved = now.now().axis().separation(before);
        boolean isFar = moved.compareTo(ScrewProgress.FARTHEST) > 0
                && now.now().axis().separation(AxisPointing.atPole(site)).compareTo(MOST_SETUP_OFFSET) > 0;
        return isFar ? Optional.of(moved) : Slew.between(axis, last, frame, drive, rig.levelSigma());
    }

    private static CameraAttitude lastOf(AxisFromFrames axis) {
        return axis.frames().get(axis.frames().size() - 1);
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
            // A turning fork flexes by more than its frames' own uncertainty; turned screws show as minutes of arc.
            boolean onlyRightAscension =
                    with.closes() || with.residuals().stream().allMatch(r -> r.compareTo(SCREWS_MOVED) < 0);
            return onlyRightAscension ? Optional.of(with) : Optional.empty();
        } catch (InputRefused refused) {
            return Optional.empty();
        }
    }

    /**
     * Within half an hour the sky moves relative to the mount and a tracking mount moves with it: both are taken for
     * one place.
     */
    private static boolean isSamePlace(CameraAttitude earlier, CameraAttitude later) {
        return later.turnedSince(earlier).getNorm() < ANOTHER_PLACE.radians();
    }
}
