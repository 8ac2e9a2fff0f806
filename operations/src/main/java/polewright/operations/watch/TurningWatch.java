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
 * Follows frames as they come: first while right ascension is turned, until they tell the axis; then while the screws are
 * turned. Holds what was seen so far; not safe for use by several threads.
 */
public final class TurningWatch {
    /** Right ascension turned by this tells the axis well enough to go on. */
    public static final Angle ENOUGH_TURN = Angle.ofDegrees(25);

    // Frames nearer than this show one place; by hand nobody turns so little on purpose.
    private static final Angle ANOTHER_PLACE = Angle.ofDegrees(8);
    // A fork gives by less as it turns.
    private static final Angle SCREWS_MOVED = Angle.ofArcminutes(1);
    // A mount that was set down far off is brought toward the pole, however far that takes its axis.
    private static final Angle SET_UP_WITHIN = Angle.ofDegrees(15);

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
     * A watch at the start of a turn.
     *
     * @param known what is known of the screws so far
     * @param drive what the drive does, if told
     */
    public TurningWatch(Site site, FollowedScrews.Known known, Allowance allowance, Drive drive) {
        this.site = site;
        this.known = known;
        this.allowance = allowance;
        this.drive = drive;
    }

    /** Goes on from frames that told the axis before. */
    public void goOnFrom(TurnedFrames frames) {
        places = frames.frames();
        afterScrews = frames.afterScrews();
        AxisFromFrames axis = AxisFromFrames.of(site, frames.frames());
        found = Optional.of(axis);
        AxisPointing now =
                afterScrews.map(axis::followedTo).orElseGet(axis::estimate).axis();
        CameraAttitude last = afterScrews.orElseGet(() -> lastOf(axis));
        screws = Optional.of(FollowedScrews.of(site, known, allowance, now, last.at()));
    }

    /** The frames that tell the axis, if they do yet; with the last one after the screws were turned, if they were. */
    public Optional<TurnedFrames> sighting() {
        return found.map(axis -> new TurnedFrames(axis.frames(), afterScrews, drive));
    }

    /** What the screws have been seen to do since the axis was found; empty before. */
    public Optional<FollowedScrews> screws() {
        return screws;
    }

    /** Whether the screws have moved the axis since the log last had it. */
    public boolean screwsMoved() {
        return screws.filter(FollowedScrews::hasMoved).isPresent();
    }

    /** Whether they have, and the axis has come to rest. */
    public boolean isToLog() {
        return screws.filter(FollowedScrews::isToLog).isPresent();
    }

    /** The log has what was seen so far, and the night has learned so much of the screws. */
    public void logged(FollowedScrews.Known learned) {
        known = learned;
        afterScrews = lastFrame.or(() -> afterScrews);
        screws = screws.map(seen -> seen.logged(learned));
    }

    /** Rig or events before were corrected: the screws are known otherwise, and what frames saw since is kept. */
    public void relearned(FollowedScrews.Known learned) {
        known = learned;
        screws = screws.map(seen -> seen.relearned(learned));
    }

    public Site site() {
        return site;
    }

    /** Turns that a hand counted are in the log. */
    public void counted(HandTurns azimuth, HandTurns altitude) {
        screws = screws.map(seen -> seen.counted(azimuth, altitude));
    }

    /** What the last frame told of the screws, with what has been learned since; empty while none was followed. */
    public Optional<WatchStep.ScrewsFollowed> followed() {
        return soFar.flatMap(last -> screws.flatMap(seen -> found.map(axis -> followed(axis, last, seen))));
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

    private void isFound(AxisFromFrames axis) {
        found = Optional.of(axis);
        soFar = Optional.empty();
        lastFrame = Optional.empty();
        screws = Optional.of(FollowedScrews.of(
                site, known, allowance, axis.axis(), lastOf(axis).at()));
    }

    /** Forgets the frames so far: the axis is looked for from here. */
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

    /** Where the screws have taken the axis, if the log does not have it. */
    public Optional<WatchStep.LeftOff> leftOff() {
        return screwsMoved() ? seen() : Optional.empty();
    }

    /** Where the last frame that was followed saw the axis, whether it has moved or not. */
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
        FollowedScrews seen = before.seeing(now.now().axis(), axis.sigmaOfAWay(frame), frame.at());
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
                now.now().widenedBy(TurnedFrames.MOUNTS_OWN_GIVE).offsetCovariance(site);
        // The screws turn on loose clamps, and what they leave is what is tightened.
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

    /** How far the mount was slewed, if it was: in declination, or farther than screws go at once, away from the pole. */
    private Optional<Angle> slew(
            AxisFromFrames axis, AxisPointing before, ScrewProgress now, CameraAttitude frame, Rig rig) {
        CameraAttitude last = afterScrews.orElseGet(() -> lastOf(axis));
        if (!frame.at().isAfter(last.at())) {
            return Optional.empty();
        }
        Angle moved = now.now().axis().separation(before);
        boolean isFar = moved.compareTo(ScrewProgress.FARTHEST) > 0
                && now.now().axis().separation(AxisPointing.atPole(site)).compareTo(SET_UP_WITHIN) > 0;
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
