package polewright.operations.camera;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import polewright.image.Frame;
import polewright.image.FrameFacts;
import polewright.image.decode.RowOrder;
import polewright.image.match.FrameMatcher;
import polewright.image.match.MatchHint;
import polewright.image.match.MatchOutcome;
import polewright.image.match.MatchedFrame;
import polewright.image.match.Plate;
import polewright.image.match.ScaleRange;
import polewright.image.match.SkyPatch;
import polewright.image.match.Unmatched;
import polewright.image.star.StarFinder;
import polewright.image.star.StarList;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.StarAtlas;

/** Decodes frames, finds their stars and matches them, one frame after another. */
public final class FrameReading {
    /** Number of progress steps for one frame. */
    public static final int STEPS_A_FRAME = 3;

    private static final double J2000_SECONDS = 946_728_000;
    private static final double SECONDS_IN_A_JULIAN_YEAR = 365.25 * 86_400;
    // Accuracy of a focal length in a header (common practice: reducers and spacings are seldom recorded).
    private static final double FOCAL_LENGTH_ACCURACY = 0.2;
    // Allows for focusing and for fields with few stars.
    private static final double SAME_CAMERA_WITHIN = 0.02;
    // While right ascension is turned, a field keeps its distance from the axis, which may be this far off the pole.
    private static final Angle MOST_AXIS_OFFSET = Angle.ofDegrees(15);

    // With the drive off, the sky moves by this much in twelve minutes.
    private static final Angle DRIVE_OFF_MOTION = Angle.ofDegrees(3);

    private final Clock clock;
    private final StepListener listener;
    private final CompletableFuture<FrameMatcher> matcher;

    /** Opened once: a watch that is restarted reuses the patterns of the previous one. */
    private static final class Bundled {
        private static final FrameMatcher MATCHER = new FrameMatcher(StarAtlas.bundled(), PatternFile.ofLauncher());
    }

    /** Starts opening the atlas; the first frame can be decoded meanwhile. */
    public FrameReading(Clock clock) {
        this(clock, step -> {});
    }

    /** The same, reporting each step as it begins. */
    public FrameReading(Clock clock, StepListener listener) {
        this.clock = clock;
        this.listener = listener;
        this.matcher = CompletableFuture.supplyAsync(() -> Bundled.MATCHER);
    }

    /**
     * Places one frame.
     *
     * @param time its exposure time
     * @param earlier a frame of the same camera that was placed before, if any
     * @throws InputRefused when the file has no frame, or its stars cannot be matched; in one line
     */
    public PlacedFrame place(FrameFile file, FrameClues clues, ExposureTime time, Optional<PlacedFrame> earlier) {
        return place(decode(file, clues), clues, time, EarlierFrames.ofFirst(earlier));
    }

    /**
     * The pixels of one frame, with the facts from its file.
     *
     * @throws InputRefused when the file has no frame; in one line
     */
    public DecodedFrame decode(FrameFile file, FrameClues clues) {
        Instant began = clock.instant();
        listener.begun("decoding " + file.name());
        RowOrder rows = RowOrder.of(file.content(), file.name());
        Frame frame = FrameDecoding.read(file.content(), file.name(), clues.decoding());
        return new DecodedFrame(file.file(), rows, frame, began);
    }

    /**
     * Places a decoded frame.
     *
     * @param time its exposure time
     * @param earlier frames of the same camera that were placed before
     * @throws InputRefused when its stars cannot be matched; in one line
     */
    public PlacedFrame place(DecodedFrame decoded, FrameClues clues, ExposureTime time, EarlierFrames earlier) {
        FrameFacts facts = decoded.frame().facts();
        RowOrder rows = decoded.rows();
        Optional<Instant> at = time.middle(decoded.name(), facts);
        listener.begun("finding stars");
        StarList stars = StarFinder.find(decoded.frame());
        listener.begun("matching stars with the atlas");
        if (at.isEmpty()) {
            requireFixedNear(clues, decoded.name());
        }
        List<Attempt> attempts = attempts(clues, facts, at.orElse(decoded.began()), rows, earlier);
        Unmatched failed = null;
        for (Attempt attempt : attempts) {
            MatchOutcome outcome = matcher.join().match(stars, attempt.hint());
            if (outcome instanceof MatchedFrame matched) {
                Duration took = Duration.between(decoded.began(), clock.instant());
                List<String> remarks = remarks(facts, at, attempt, matched);
                PlacedFrame placed = new PlacedFrame(
                        decoded.file(), facts, at, rows, clues.decoding(), stars, matched, took, remarks);
                earlier.first().ifPresent(before -> requireSameCamera(before, placed));
                return placed;
            }
            failed = (Unmatched) outcome;
            if (stars.size() < FrameMatcher.FEWEST_STARS) {
                break;
            }
        }
        if (failed == null) {
            throw new IllegalStateException("a frame was not looked up at all");
        }
        Unmatched all = stars.size() < FrameMatcher.FEWEST_STARS
                ? failed
                : matcher.join()
                        .unmatched(stars, attempts.stream().map(Attempt::hint).toList(), widest(attempts));
        throw new InputRefused(all.reason(), all.remedy()).at(decoded.name());
    }

    /** The last search, and those that differ from it only in the part of the sky (such as the other pole). */
    private static List<MatchHint> widest(List<Attempt> attempts) {
        MatchHint last = attempts.get(attempts.size() - 1).hint();
        return attempts.stream()
                .map(Attempt::hint)
                .filter(hint -> hint.scale().equals(last.scale())
                        && hint.mirrored().equals(last.mirrored())
                        && hint.near().isPresent() == last.near().isPresent())
                .toList();
    }

    private static void requireFixedNear(FrameClues clues, String name) {
        clues.near().flatMap(NearPlace::movingBody).ifPresent(body -> {
            throw new InputRefused(
                            "--near " + body.label() + " needs the time of exposure, which the file does not give",
                            "give the middle of the exposure with --at, such as --at 2026-11-25T20:00Z")
                    .at(name);
        });
    }

    /**
     * An axis from frames rests on the assumption of one fixed point in the picture: frames of two cameras would mix
     * two.
     */
    private static void requireSameCamera(PlacedFrame before, PlacedFrame placed) {
        Angle first = before.match().plate().scale();
        Angle scale = placed.match().plate().scale();
        boolean sameScale = Math.abs(scale.radians() / first.radians() - 1) <= SAME_CAMERA_WITHIN;
        if (sameScale && before.mirroredAsDrawn() == placed.mirroredAsDrawn()) {
            return;
        }
        String how = sameScale
                ? "one is mirrored"
                : String.format(Locale.ROOT, "%.2f″ and %.2f″ per pixel", first.arcseconds(), scale.arcseconds());
        throw new InputRefused(
                        "this frame and " + before.name() + " are from different cameras or focal lengths (" + how
                                + ")",
                        "use one camera's")
                .at(placed.name());
    }

    /**
     * A way to match a frame.
     *
     * @param otherThan the expected scale that was given up to try this one; empty for what was given
     */
    private record Attempt(MatchHint hint, Optional<Angle> otherThan) {}

    private static List<Attempt> attempts(
            FrameClues clues, FrameFacts facts, Instant at, RowOrder rows, EarlierFrames earlier) {
        MatchHint open =
                new MatchHint(Optional.empty(), ScaleRange.ANY, clues.mirrored().map(rows::flips), julianYear(at));
        List<Attempt> attempts = new ArrayList<>();
        earlier.first().ifPresent(before -> {
            MatchHint sameCamera = new MatchHint(
                    Optional.empty(),
                    ScaleRange.about(before.match().plate().scale(), SAME_CAMERA_WITHIN),
                    Optional.of(rows.flips(before.mirroredAsDrawn())),
                    julianYear(at));
            earlier.last()
                    .ifPresent(
                            last -> attempts.add(new Attempt(sameCamera.near(unturnedRegion(last)), Optional.empty())));
            attempts.add(new Attempt(sameCamera.near(turnedRegion(before)), Optional.empty()));
            attempts.add(new Attempt(sameCamera, Optional.empty()));
        });
        Optional<Angle> optical = clues.opticalScale(facts);
        if (clues.scale().isPresent()) {
            addNear(attempts, open.withScale(clues.scale().get()), clues, at, Optional.empty());
            return attempts;
        }
        optical.filter(FrameReading::isUsable)
                .ifPresent(scale -> addNear(
                        attempts,
                        open.withScale(ScaleRange.about(scale, FOCAL_LENGTH_ACCURACY)),
                        clues,
                        at,
                        Optional.empty()));
        addNear(attempts, open, clues, at, optical);
        return attempts;
    }

    private static void addNear(
            List<Attempt> attempts, MatchHint hint, FrameClues clues, Instant at, Optional<Angle> otherThan) {
        List<SkyPatch> patches = clues.patches(at);
        if (patches.isEmpty()) {
            attempts.add(new Attempt(hint, otherThan));
        }
        patches.forEach(patch -> attempts.add(new Attempt(hint.near(patch), otherThan)));
    }

    /** The region for a camera that has not been turned since, except by the screws and by the sky's rotation. */
    private static SkyPatch unturnedRegion(PlacedFrame last) {
        Plate plate = last.match().plate();
        return new SkyPatch(
                plate.rightAscension(), plate.declination(), plate.radius().plus(DRIVE_OFF_MOTION));
    }

    /** The region that a field can reach while right ascension is turned. */
    private static SkyPatch turnedRegion(PlacedFrame before) {
        Angle declination = before.match().plate().declination();
        return SkyPatch.aroundPole(
                declination.radians() >= 0,
                Angle.QUARTER_TURN.minus(declination.abs()).plus(MOST_AXIS_OFFSET));
    }

    private static boolean isUsable(Angle scale) {
        return scale.compareTo(ScaleRange.ANY.least()) > 0 && scale.compareTo(ScaleRange.ANY.most()) < 0;
    }

    private static List<String> remarks(FrameFacts facts, Optional<Instant> at, Attempt attempt, MatchedFrame matched) {
        List<String> remarks = new ArrayList<>(facts.remarks());
        if (at.isEmpty()) {
            remarks.add("the file gives no time, so the present time is used (--at gives another).");
        }
        attempt.otherThan()
                .ifPresent(expected -> remarks.add(String.format(
                        Locale.ROOT,
                        "its focal length and pixel size give %.2f″ per pixel; the stars give %.2f″.",
                        expected.arcseconds(),
                        matched.plate().scale().arcseconds())));
        return remarks;
    }

    private static double julianYear(Instant at) {
        return 2000 + (at.getEpochSecond() - J2000_SECONDS) / SECONDS_IN_A_JULIAN_YEAR;
    }
}
