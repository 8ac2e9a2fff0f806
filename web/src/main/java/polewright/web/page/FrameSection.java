package polewright.web.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import polewright.alignment.advice.Advice;
import polewright.drawing.frame.CloseUp;
import polewright.drawing.frame.FrameDrawing;
import polewright.drawing.frame.FrameScene;
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

/** The newest frame as part of a page: its picture, what it shows, and which turns remain. */
final class FrameSection {
    private FrameSection() {}

    /** On its own page: only the section is reloaded, so that entries elsewhere on the page are kept. */
    static Section alone(PageRequest request, WatchedFrames frames, Tonight tonight) {
        FrameStatus status = frames.status();
        CloseUp part = FrameAddress.part(request.words()).orElse(CloseUp.WHOLE);
        String here = request.to(FrameAddress.PAGE);
        String stream = request.to("/changes") + "?stand=" + request.eventCount() + "&frame=" + status.number();
        return new Section.Frames(
                here + FrameAddress.query(part),
                stream,
                next(status, tonight.state()),
                lines(status),
                status.newest().map(shot -> picture(request, status.number(), shot, part, true)),
                isTurning(status, tonight.state()) ? settled(request, status, tonight) : Optional.empty());
    }

    /** Within the page of what to do now, which is reloaded as a whole. */
    static Section within(PageRequest request, FrameStatus status, Tonight tonight) {
        return new Section.Frames(
                "",
                "",
                steps(status),
                lines(status),
                status.newest().map(shot -> picture(request, status.number(), shot, CloseUp.WHOLE, false)),
                settled(request, status, tonight));
    }

    /** Below the night's own advice: what the frame shows, with no action. */
    static Section below(PageRequest request, FrameStatus status) {
        return new Section.Frames(
                "",
                "",
                List.of(),
                lines(status),
                status.newest().map(shot -> picture(request, status.number(), shot, CloseUp.WHOLE, false)),
                Optional.empty());
    }

    /**
     * Whether frames still guide the turning of a screw. Once the clamps are next, or tight, the night's advice does.
     */
    static boolean isTurning(FrameStatus status, NightState night) {
        return !night.clamped()
                && status.followed()
                        .filter(followed -> !followed.goodEnough() || night.advice() instanceof Advice.TurnScrews)
                        .isPresent();
    }

    private static List<Section.Step> next(FrameStatus status, NightState night) {
        return status.followed().isPresent() && !isTurning(status, night)
                ? TaggedLines.steps(AdviceWords.whileFollowed(night))
                : steps(status);
    }

    private static List<Section.Step> steps(FrameStatus status) {
        return status.followed()
                .map(followed -> TaggedLines.steps(WatchWords.remaining(followed)))
                .orElse(List.of());
    }

    private static Optional<Section.Settled> settled(PageRequest request, FrameStatus status, Tonight tonight) {
        return status.followed()
                .map(followed -> new Section.Settled(
                        request.to(FrameAddress.SETTLED),
                        "settled-" + tonight.id().number() + "-" + tonight.lastSeq(),
                        tonight.id().number(),
                        tonight.lastSeq()));
    }

    private static List<String> lines(FrameStatus status) {
        List<String> lines = new ArrayList<>();
        if (!status.note().isEmpty()) {
            lines.add(status.note());
        }
        if (status.newest().isEmpty()) {
            lines.add("No frame yet.");
            return lines;
        }
        LiveView.Shot shot = status.newest().get();
        if (shot.isPending()) {
            lines.add(shot.name() + ": matching its stars. The first frame of a night takes longest.");
        }
        shot.refusal().ifPresent(lines::add);
        status.step().map(step -> step.accept(new Result())).ifPresent(lines::addAll);
        shot.frame()
                .ifPresent(frame -> lines.add(shot.name()
                        + frame.at().map(at -> ", " + AxisWords.clock(at)).orElse("") + ": "
                        + FrameDrawing.description(frame)));
        return lines;
    }

    private static Section.Picture picture(
            PageRequest request, long number, LiveView.Shot shot, CloseUp part, boolean canLookCloser) {
        Optional<FrameScene> seen = shot.frame().map(part::of);
        String query = FrameAddress.query(part);
        return new Section.Picture(
                request.to(FrameAddress.LIGHT) + query + (query.isEmpty() ? "?" : "&") + "n=" + number,
                shot.picture().width(),
                shot.picture().height(),
                seen.map(frame -> FrameDrawing.svg(frame, request.palette())).orElse(""),
                "Frame " + shot.name(),
                canLookCloser ? looks(request, shot, part) : List.of(),
                part.left(),
                part.top(),
                part.times(),
                !canLookCloser ? 0 : part.isWhole() ? shot.picture().fullSizeTimes() : part.times());
    }

    private static List<Section.Way> looks(PageRequest request, LiveView.Shot shot, CloseUp part) {
        int fullSize = shot.picture().fullSizeTimes();
        List<Section.Way> ways = new ArrayList<>(List.of(look(request, "Closer", part.closer(fullSize))));
        if (!part.isWhole()) {
            ways.add(look(request, "Wider", part.wider(fullSize)));
            ways.add(look(request, "Left", part.moved(-1, 0)));
            ways.add(look(request, "Right", part.moved(1, 0)));
            ways.add(look(request, "Up", part.moved(0, -1)));
            ways.add(look(request, "Down", part.moved(0, 1)));
            ways.add(look(request, "Whole", CloseUp.WHOLE));
        }
        return ways;
    }

    private static Section.Way look(PageRequest request, String label, CloseUp part) {
        return new Section.Way(request.to(FrameAddress.PAGE) + FrameAddress.query(part), label, false);
    }

    /** What a frame has shown. */
    private static final class Result implements WatchStep.Visitor<List<String>> {
        @Override
        public List<String> placed(WatchStep.Placed step) {
            return List.of(WatchWords.placed(step));
        }

        @Override
        public List<String> startedAfresh(WatchStep.StartedAfresh step) {
            return List.of(WatchWords.startedAfresh(step));
        }

        @Override
        public List<String> axisFound(WatchStep.AxisFound step) {
            return List.of(AxisWords.line(step.axis()));
        }

        @Override
        public List<String> axisSharpened(WatchStep.AxisSharpened step) {
            return List.of(AxisWords.line(step.axis()));
        }

        @Override
        public List<String> screwsFollowed(WatchStep.ScrewsFollowed step) {
            List<String> lines = new ArrayList<>();
            lines.add(WatchWords.moved(step));
            lines.addAll(WatchWords.notes(step));
            return lines;
        }
    }
}
