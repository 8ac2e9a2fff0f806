package polewright.web.page;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import polewright.alignment.advice.Advice;
import polewright.alignment.advice.AdvisedStar;
import polewright.alignment.advice.ScrewTurn;
import polewright.alignment.advice.SightingKind;
import polewright.drawing.zone.ZoneDrawing;
import polewright.report.scene.NightScene;
import polewright.report.scene.WedgeScene;
import polewright.report.text.AdviceWords;
import polewright.report.text.FixWords;
import polewright.report.text.TurnWords;
import polewright.session.NightState;
import polewright.web.form.CommandForm;
import polewright.web.form.NightForms;
import polewright.web.form.SightingForms;
import polewright.web.session.FrameAddress;
import polewright.web.session.FrameStatus;
import polewright.web.session.NightSession.Tonight;
import polewright.web.session.PracticeAddress;
import polewright.web.session.WatchedFrames;
import polewright.web.view.Section;

/** The one thing to do now, why, its picture, and a big button to confirm that it is done. */
final class NowPage implements Page {
    @Override
    public String path() {
        return "/";
    }

    @Override
    public String name() {
        return "Now";
    }

    @Override
    public boolean isLive() {
        return true;
    }

    @Override
    public List<Section> sections(PageRequest request) {
        return request.session()
                .tonight()
                .map(tonight -> of(request, tonight))
                .orElseGet(() -> NoNightNotice.sections(request));
    }

    private static List<Section> of(PageRequest request, Tonight tonight) {
        NightState night = tonight.state();
        Optional<FrameStatus> frames = request.session().frames().map(WatchedFrames::status);
        if (frames.filter(status -> FrameSection.isTurning(status, night)).isPresent()) {
            return whileTurning(request, tonight, frames.get());
        }
        List<Section> sections = new ArrayList<>();
        List<Section.Step> steps = TaggedLines.steps(AdviceWords.of(night));
        sections.add(new Section.Steps(
                steps.stream().filter(step -> !step.tag().equals("Care")).toList()));
        List<String> cares = steps.stream()
                .filter(step -> step.tag().equals("Care"))
                .map(Section.Step::text)
                .toList();
        if (!cares.isEmpty()) {
            sections.add(new Section.Caution(cares));
        }
        sections.addAll(action(request, tonight));
        SkipPresses.of(request, night).ifPresent(sections::add);
        sections.addAll(SkipPresses.findPoleStar(request, night));
        List<Section.Step> doubts = TaggedLines.lines(FixWords.doubts(night)).stream()
                .filter(doubt -> steps.stream().noneMatch(step -> step.text().contains(doubt.text())))
                .toList();
        if (!doubts.isEmpty()) {
            sections.add(new Section.Words(
                    "", doubts.stream().map(Section.Step::text).toList()));
        }
        MistakePresses.of(request, night).ifPresent(sections::add);
        boolean areWanted = night.advice() instanceof Advice.TakeSighting take && take.kind() == SightingKind.FRAMES;
        frames.filter(status -> status.followed().isPresent()
                        || (areWanted && status.step().isPresent()))
                .map(status -> FrameSection.below(request, status))
                .ifPresent(sections::add);
        sections.add(picture(request, night));
        return sections;
    }

    /** While a screw is being turned, what the frames show comes before the advice that started the turning. */
    private static List<Section> whileTurning(PageRequest request, Tonight tonight, FrameStatus frames) {
        List<Section> sections = new ArrayList<>();
        sections.add(FrameSection.within(request, frames, tonight));
        sections.add(new Section.Ways(
                "",
                List.of(
                        new Section.Way(request.to(FrameAddress.PAGE), "Look closer at the frame", false),
                        new Section.Way(request.to("/sightings/turn"), "I turned something else", false))));
        frames.followed()
                .filter(followed -> !followed.goodEnough())
                .map(followed -> WedgeScene.remaining(tonight.state(), followed.ordered(), request.palette()))
                .ifPresent(svg -> sections.add(new Section.Drawing("", svg)));
        return sections;
    }

    private static Section picture(PageRequest request, NightState night) {
        return night.advice() instanceof Advice.TurnScrews
                ? new Section.Drawing("", WedgeScene.svg(night, request.palette()))
                : new Section.Drawing("", ZoneDrawing.svg(NightScene.of(night), request.palette()));
    }

    private static List<Section> action(PageRequest request, Tonight tonight) {
        return tonight.state().advice().accept(new Action(request, tonight));
    }

    private static List<Section.Way> afterStop(PageRequest request) {
        return request.session().prefix().isEmpty()
                ? List.of(
                        new Section.Way(request.to("/pointing"), "Align on stars", false),
                        new Section.Way(request.to("/tonight"), "What to observe tonight", false))
                : List.of(new Section.Way(PracticeAddress.DEBRIEF, "Show where the axis really points", true));
    }

    private static Section done(PageRequest request, Tonight tonight, CommandForm form, Map<String, String> values) {
        return new Section.Done(
                Forms.advised(request, form, values, tonight.id().number(), tonight.lastSeq()));
    }

    private static Section other(PageRequest request, String path, String label) {
        return new Section.Ways("", List.of(new Section.Way(request.to(path), label, false)));
    }

    private static Section sighting(PageRequest request, Advice.TakeSighting take) {
        Optional<CommandForm> form = SightingForms.of(take.kind());
        if (form.isEmpty()) {
            return new Section.Ways(
                    "", List.of(new Section.Way(request.to(FrameAddress.PAGE), "Go to the frames", true)));
        }
        String query = take.star()
                .map(star -> "?star=" + encoded(star)
                        + (take.watch().isZero()
                                ? ""
                                : "&minutes=" + take.watch().toMinutes()))
                .orElse("");
        return new Section.Ways(
                "",
                List.of(new Section.Way(
                        request.to("/sightings/" + form.get().id()) + query, "Enter what you see", true)));
    }

    private static String encoded(AdvisedStar star) {
        return java.net.URLEncoder.encode(star.name(), java.nio.charset.StandardCharsets.UTF_8);
    }

    private record Action(PageRequest request, Tonight tonight) implements Advice.Visitor<List<Section>> {
        @Override
        public List<Section> turnScrews(Advice.TurnScrews turn) {
            Map<String, String> turns = new LinkedHashMap<>();
            for (ScrewTurn each : turn.turns()) {
                turns.put(each.screw() == ScrewTurn.Which.AZIMUTH ? "azimuth" : "altitude", TurnWords.typed(each));
            }
            return List.of(
                    done(request, tonight, NightForms.TURN, turns),
                    other(request, "/sightings/turn", "I turned something else"));
        }

        @Override
        public List<Section> moveByHand(Advice.MoveByHand advice) {
            return List.of(done(request, tonight, NightForms.KNOCK, Map.of()));
        }

        @Override
        public List<Section> takeSighting(Advice.TakeSighting take) {
            return List.of(sighting(request, take));
        }

        @Override
        public List<Section> waitForDark(Advice.WaitForDark advice) {
            return List.of();
        }

        @Override
        public List<Section> waitForSky(Advice.WaitForSky advice) {
            return List.of(other(request, "/nights", "Undo a skip"));
        }

        @Override
        public List<Section> clamp(Advice.Clamp advice) {
            return List.of(done(request, tonight, NightForms.CLAMP, Map.of()));
        }

        @Override
        public List<Section> stop(Advice.Stop advice) {
            return List.of(new Section.Ways("", afterStop(request)));
        }
    }
}
