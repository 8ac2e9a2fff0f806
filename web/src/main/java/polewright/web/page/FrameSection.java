package polewright.web.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import polewright.alignment.advice.Advice;
import polewright.operations.picture.CloseUp;
import polewright.operations.picture.LiveFrame;
import polewright.operations.picture.LiveFrameDrawing;
import polewright.operations.watch.LiveView;
import polewright.operations.watch.WatchStep;
import polewright.report.text.AdviceWords;
import polewright.report.text.AxisWords;
import polewright.report.text.WatchWords;
import polewright.session.NightState;
import polewright.web.session.FrameAddress;
import polewright.web.session.FrameStatus;
import polewright.web.session.NightSession.Tonight;
import polewright.web.session.WatchedFrames;
import polewright.web.view.Section;

/** The newest frame as a part of a page: its picture, what it told, and which turns remain. */
final class FrameSection {
    private FrameSection() {}

    /** On a page of its own: it is asked for again by itself, so that what is being typed beside it stays. */
    static Section alone(PageRequest asked, WatchedFrames frames, Tonight tonight) {
        FrameStatus stand = frames.stand();
        CloseUp part = FrameAddress.part(asked.words()).orElse(CloseUp.WHOLE);
        String here = asked.to(FrameAddress.PAGE);
        String stream = asked.to("/changes") + "?stand=" + asked.stand() + "&frame=" + stand.number();
        return new Section.Frames(
                here + FrameAddress.query(part),
                stream,
                next(stand, tonight.state()),
                lines(stand),
                stand.newest().map(shot -> picture(asked, stand.number(), shot, part, true)),
                isTurning(stand, tonight.state()) ? settled(asked, stand, tonight) : Optional.empty());
    }

    /** Among what is to be done now, where the whole page is asked for again. */
    static Section within(PageRequest asked, FrameStatus stand, Tonight tonight) {
        return new Section.Frames(
                "",
                "",
                steps(stand),
                lines(stand),
                stand.newest().map(shot -> picture(asked, stand.number(), shot, CloseUp.WHOLE, false)),
                settled(asked, stand, tonight));
    }

    /** Below what the night says is to be done now: what the frame shows, and nothing to do. */
    static Section below(PageRequest asked, FrameStatus stand) {
        return new Section.Frames(
                "",
                "",
                List.of(),
                lines(stand),
                stand.newest().map(shot -> picture(asked, stand.number(), shot, CloseUp.WHOLE, false)),
                Optional.empty());
    }

    /** Whether frames have more to say to a hand on a screw; once the clamps are next, or tight, the night has. */
    static boolean isTurning(FrameStatus stand, NightState night) {
        return !night.clamped()
                && stand.followed()
                        .filter(followed -> !followed.goodEnough() || night.advice() instanceof Advice.TurnScrews)
                        .isPresent();
    }

    private static List<Section.Step> next(FrameStatus stand, NightState night) {
        return stand.followed().isPresent() && !isTurning(stand, night)
                ? TaggedLines.steps(AdviceWords.whileFollowed(night))
                : steps(stand);
    }

    private static List<Section.Step> steps(FrameStatus stand) {
        return stand.followed()
                .map(followed -> TaggedLines.steps(WatchWords.remaining(followed)))
                .orElse(List.of());
    }

    private static Optional<Section.Settled> settled(PageRequest asked, FrameStatus stand, Tonight tonight) {
        return stand.followed()
                .map(followed -> new Section.Settled(
                        asked.to(FrameAddress.SETTLED),
                        "settled-" + tonight.id().number() + "-" + tonight.lastSeq(),
                        tonight.id().number(),
                        tonight.lastSeq()));
    }

    private static List<String> lines(FrameStatus stand) {
        List<String> lines = new ArrayList<>();
        if (!stand.note().isEmpty()) {
            lines.add(stand.note());
        }
        if (stand.newest().isEmpty()) {
            lines.add("No frame yet.");
            return lines;
        }
        LiveView.Shot shot = stand.newest().get();
        if (shot.isLookedUp()) {
            lines.add(shot.name() + ": matching its stars. The first frame of a night takes longest.");
        }
        shot.refusal().ifPresent(lines::add);
        stand.step().map(FrameSection::told).ifPresent(lines::addAll);
        shot.frame()
                .ifPresent(frame -> lines.add(shot.name()
                        + frame.at().map(at -> ", " + AxisWords.clock(at)).orElse("") + ": "
                        + LiveFrameDrawing.description(frame)));
        return lines;
    }

    private static List<String> told(WatchStep step) {
        List<String> lines = new ArrayList<>();
        if (step instanceof WatchStep.Placed placed) {
            lines.add(WatchWords.placed(placed));
        } else if (step instanceof WatchStep.StartedAfresh afresh) {
            lines.add(WatchWords.startedAfresh(afresh));
        } else if (step instanceof WatchStep.AxisFound found) {
            lines.add(AxisWords.line(found.axis()));
        } else if (step instanceof WatchStep.AxisSharpened sharper) {
            lines.add(AxisWords.line(sharper.axis()));
        } else if (step instanceof WatchStep.ScrewsFollowed followed) {
            lines.add(WatchWords.moved(followed));
            lines.addAll(WatchWords.notes(followed));
        }
        return lines;
    }

    private static Section.Picture picture(
            PageRequest asked, long number, LiveView.Shot shot, CloseUp part, boolean canLookCloser) {
        Optional<LiveFrame> seen = shot.frame().map(part::of);
        String query = FrameAddress.query(part);
        return new Section.Picture(
                asked.to(FrameAddress.LIGHT) + query + (query.isEmpty() ? "?" : "&") + "n=" + number,
                shot.picture().width(),
                shot.picture().height(),
                seen.map(frame -> LiveFrameDrawing.of(frame, asked.palette())).orElse(""),
                "Frame " + shot.name(),
                canLookCloser ? looks(asked, shot, part) : List.of(),
                part.left(),
                part.top(),
                part.times(),
                !canLookCloser ? 0 : part.isWhole() ? shot.picture().fullSizeTimes() : part.times());
    }

    private static List<Section.Way> looks(PageRequest asked, LiveView.Shot shot, CloseUp part) {
        int fullSize = shot.picture().fullSizeTimes();
        List<Section.Way> ways = new ArrayList<>(List.of(look(asked, "Closer", part.closer(fullSize))));
        if (!part.isWhole()) {
            ways.add(look(asked, "Wider", part.wider(fullSize)));
            ways.add(look(asked, "Left", part.moved(-1, 0)));
            ways.add(look(asked, "Right", part.moved(1, 0)));
            ways.add(look(asked, "Up", part.moved(0, -1)));
            ways.add(look(asked, "Down", part.moved(0, 1)));
            ways.add(look(asked, "Whole", CloseUp.WHOLE));
        }
        return ways;
    }

    private static Section.Way look(PageRequest asked, String label, CloseUp part) {
        return new Section.Way(asked.to(FrameAddress.PAGE) + FrameAddress.query(part), label, false);
    }
}
