package polewright.web.page;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import polewright.alignment.work.Work;
import polewright.drawing.Palette;
import polewright.mount.AxisOffset;
import polewright.planning.tonight.AlignmentOutcome;
import polewright.planning.tonight.AlignmentStars;
import polewright.planning.tonight.Evening;
import polewright.planning.tonight.KnownAxis;
import polewright.planning.tonight.LoggedEvening;
import polewright.planning.tonight.Observing;
import polewright.planning.tonight.TonightsPlan;
import polewright.planning.tonight.TwilightCaution;
import polewright.report.scene.TonightScene;
import polewright.report.text.DarknessWords;
import polewright.report.text.StarFindingWords;
import polewright.report.text.Tag;
import polewright.report.text.TonightWords;
import polewright.session.NightState;
import polewright.session.event.NightEvent;
import polewright.sky.body.SkyBody;
import polewright.sky.daylight.Instrument;
import polewright.sky.place.Horizon;
import polewright.web.form.WorkForms;
import polewright.web.view.Section;

/**
 * Whether the night is worthwhile, when it is dark, what to observe in which order, and the stars to align on. Times
 * are those of the laptop's clock, with their zone, so that they can be compared with a watch.
 */
final class TonightPage implements Page {
    private static final String ALIGN = "Stars to align on";
    private static final Pattern TYPED = Pattern.compile(" \\((?:polewright [a-z]+|--[a-z]+[^)]*)\\)");

    @Override
    public String path() {
        return "/tonight";
    }

    @Override
    public String name() {
        return "Tonight";
    }

    @Override
    public List<Section> sections(PageRequest request) {
        return request.session()
                .tonight()
                .map(tonight -> of(request, tonight.state()))
                .orElseGet(() -> NoNightNotice.sections(request));
    }

    private static List<Section> of(PageRequest request, NightState night) {
        List<Section> sections =
                new ArrayList<>(request.session().eachMinute(From.of(request, night), () -> sections(request, night)));
        sections.add(new Section.Entry(Forms.fresh(request, WorkForms.TARGET, Map.of())));
        return sections;
    }

    /**
     * What the page depends on, except the time.
     *
     * @param axis the axis offset, in steps too small to change a plan
     */
    private record From(
            Palette palette,
            NightEvent.Begun begun,
            Optional<Work> work,
            Horizon horizon,
            List<SkyBody> wanted,
            Optional<List<Long>> axis) {
        private static final double STEP_ARCMIN = 10;

        static From of(PageRequest request, NightState night) {
            return new From(
                    request.palette(),
                    night.begun(),
                    night.work(),
                    night.horizon(),
                    LoggedEvening.wanted(night),
                    LoggedEvening.axis(night).map(KnownAxis::offset).map(From::steps));
        }

        private static List<Long> steps(AxisOffset offset) {
            return List.of(
                    Math.round(offset.east().arcminutes() / STEP_ARCMIN),
                    Math.round(offset.up().arcminutes() / STEP_ARCMIN));
        }
    }

    private static List<Section> sections(PageRequest request, NightState night) {
        ZoneId zone = request.session().workbench().clock().getZone();
        Evening evening = LoggedEvening.of(night, request.session().workbench().now());
        TonightsPlan plan = TonightsPlan.usual(
                evening,
                Observing.of(evening.rig(), night.work(), Optional.empty()),
                LoggedEvening.targets(LoggedEvening.wanted(night)));
        List<Section> sections = new ArrayList<>(plan(request, plan, zone));
        sections.addAll(stars(evening, zone, mentionsSunrise(plan)));
        return sections;
    }

    /**
     * Whether the plan's cautions already mention the sunrise: by night it is the coming one, which the list of stars
     * would repeat.
     */
    private static boolean mentionsSunrise(TonightsPlan plan) {
        return plan.sunCautions().stream().anyMatch(caution -> caution.crossing() == TwilightCaution.Crossing.RISES);
    }

    private static List<Section> plan(PageRequest request, TonightsPlan plan, ZoneId zone) {
        TonightWords words = new TonightWords(plan, zone);
        List<Section> sections = new ArrayList<>();
        List<String> first = new ArrayList<>(List.of(words.worth()));
        first.addAll(words.preparations());
        sections.add(words("", first));
        sections.add(new Section.Drawing("", TonightScene.svg(plan, zone, request.palette())));
        for (DarknessWords.Day day : words.days()) {
            sections.add(new Section.Table(
                    day.heading(),
                    List.of("", "At"),
                    day.times().stream()
                            .map(timed -> List.of(timed.what(), timed.time()))
                            .toList()));
        }
        sections.add(new Section.Words("", words.sky()));
        List<String> cautions = words.cautions();
        if (!cautions.isEmpty()) {
            sections.add(new Section.Caution(cautions));
        }
        sections.add(new Section.Items(words.planned(), items(words.slots())));
        List<String> after = new ArrayList<>();
        words.exposuresToCome().ifPresent(after::add);
        after.addAll(words.missed());
        if (!after.isEmpty()) {
            sections.add(words("", after));
        }
        List<String> others = words.others();
        if (!others.isEmpty()) {
            sections.add(new Section.Items(
                    TonightWords.OTHERS,
                    others.stream()
                            .map(line -> new Section.Item(line, List.of()))
                            .toList()));
        }
        return sections;
    }

    private static List<Section.Item> items(List<TonightWords.Slot> slots) {
        return slots.stream()
                .map(slot -> new Section.Item(slot.heading(), TaggedLines.lines(Tag.PLAIN.lines(slot.lines()))))
                .toList();
    }

    private static List<Section> stars(Evening evening, ZoneId zone, boolean mentionsSunrise) {
        AlignmentOutcome outcome = AlignmentStars.of(
                evening,
                AlignmentStars.USUAL,
                Instrument.forFinding(StarFindingWords.USUAL_APERTURE_MM),
                Optional.empty());
        StarFindingWords words = new StarFindingWords(evening, zone, StarFindingWords.USUAL_APERTURE_MM, true);
        if (!(outcome instanceof AlignmentOutcome.Chosen chosen)) {
            return List.of(words(ALIGN, words.of(outcome, AlignmentStars.USUAL)));
        }
        List<Section> sections = new ArrayList<>();
        List<String> cautions = words.cautions(chosen);
        if (!cautions.isEmpty() && (chosen.isSunUp() || !mentionsSunrise)) {
            sections.add(new Section.Caution(cautions));
        }
        sections.add(new Section.Words(ALIGN, List.of(words.heading())));
        sections.add(new Section.Items(
                "",
                words.found(chosen).stream()
                        .map(star -> new Section.Item(
                                star.heading(),
                                star.lines().stream()
                                        .map(line -> new Section.Step(TaggedLines.word(line.tag()), line.text()))
                                        .toList()))
                        .toList()));
        sections.add(words("", words.expected(chosen, AlignmentStars.USUAL)));
        return sections;
    }

    /** Without the commands for a terminal, which are in brackets. */
    private static Section words(String heading, List<String> lines) {
        return new Section.Words(
                heading,
                lines.stream().map(line -> TYPED.matcher(line).replaceAll("")).toList());
    }
}
