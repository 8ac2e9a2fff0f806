package polewright.web.page;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import polewright.operations.sighting.Replacement;
import polewright.report.text.EventWords;
import polewright.session.NightSummary;
import polewright.session.StandingEvents;
import polewright.session.event.Correction;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.web.form.CommandForm;
import polewright.web.form.CommandForms;
import polewright.web.form.NightForms;
import polewright.web.view.FormView;
import polewright.web.view.Section;

/** One night's log, with a note form and links to other nights. */
final class NightPage implements Page {
    static final String PATH = ChosenNight.PAGE;

    // More than a night usually has; a page with all of them would take a phone too long to draw.
    private static final int MOST_EVENTS = 200;
    private static final String BEFORE = "before";

    @Override
    public String path() {
        return PATH;
    }

    @Override
    public String name() {
        return "Nights";
    }

    @Override
    public List<Section> sections(PageRequest request) {
        List<Section> sections = new ArrayList<>();
        Optional<NightSummary> chosen = ChosenNight.of(request);
        if (chosen.isEmpty()) {
            sections.add(new Section.Words(
                    "",
                    List.of(
                            request.session().nights().isEmpty()
                                    ? "No night has begun yet."
                                    : "That night does not exist. Choose one below.")));
        }
        chosen.ifPresent(night -> {
            sections.addAll(events(request, night));
            if (isTonight(request, night)) {
                sections.add(new Section.Entry(Forms.fresh(request, NightForms.NOTE, Map.of())));
            }
        });
        if (!request.session().nights().isEmpty()) {
            sections.add(new Section.Choosing(
                    "All nights",
                    request.to(path()),
                    List.of(ChosenNight.select(request, ChosenNight.WORD, "Which night", chosen)),
                    "Show"));
        }
        sections.add(new Section.Ways("", ways(request, chosen)));
        if (request.session().prefix().isEmpty()) {
            sections.add(new Section.Upload(
                    "Add a night from a file",
                    request.to(ChosenNight.UPLOAD),
                    Forms.randomKey(),
                    "The night",
                    "JSON Lines, as Download gives them, up to 8 MiB. As a command: polewright log import FILE",
                    ".jsonl",
                    "Add"));
        }
        return sections;
    }

    private static List<Section.Way> ways(PageRequest request, Optional<NightSummary> chosen) {
        List<Section.Way> ways = new ArrayList<>();
        chosen.ifPresent(night -> {
            String which = "?" + ChosenNight.WORD + "=" + night.id().number();
            ways.add(new Section.Way(request.to(ComparePage.PATH) + which, "Compare with another night", false));
            ways.add(new Section.Way(request.to(SeasonsPage.PATH) + which, "How pier and wedge move", false));
            ways.add(new Section.Way(request.to(ChosenNight.DOWNLOAD) + which, "Download", false));
        });
        if (chosen.filter(night -> isTonight(request, night)).isPresent()) {
            ways.add(new Section.Way(
                    request.to(Pages.path(NightForms.UNLOGGED_TURN)), "Screws were turned but not logged", false));
            ways.add(new Section.Way(
                    request.to(Pages.path(NightForms.RETIME)), "The computer's clock was wrong: correct times", false));
        }
        ways.add(new Section.Way(request.to("/begin"), "Begin another night", false));
        return ways;
    }

    private static boolean isTonight(PageRequest request, NightSummary night) {
        return request.session()
                .tonight()
                .filter(tonight -> tonight.id().equals(night.id()))
                .isPresent();
    }

    private static List<Section> events(PageRequest request, NightSummary night) {
        List<LoggedEvent> all = request.session().events(night.id());
        StandingEvents standing = StandingEvents.among(all);
        Map<Long, Long> replacements = standing.replacements();
        boolean isTonight = isTonight(request, night);
        long before = request.word(BEFORE)
                .filter(seq -> seq.matches("\\d{1,9}"))
                .map(Long::parseLong)
                .orElse(Long.MAX_VALUE);
        List<LoggedEvent> earlier =
                all.stream().takeWhile(event -> event.seq() < before).toList();
        List<LoggedEvent> onThisPage = earlier.subList(Math.max(0, earlier.size() - MOST_EVENTS), earlier.size());
        List<Section.EventView> shown = new ArrayList<>();
        for (LoggedEvent logged : onThisPage) {
            shown.add(new Section.EventView(
                    logged.seq(),
                    logged.at().toString().replaceFirst("T(\\d\\d:\\d\\d).*", " $1 UTC"),
                    EventWords.of(logged, standing.asLogged()) + EventWords.replaced(logged, replacements),
                    !standing.has(logged.seq()) && !EventWords.isWithdrawal(logged),
                    undo(request, logged, isTonight),
                    isTonight && standing.has(logged.seq()) && !replacements.containsKey(logged.seq())
                            ? correction(request, logged)
                            : Optional.empty()));
        }
        Collections.reverse(shown);
        List<Section> sections = new ArrayList<>();
        sections.add(new Section.Events(isTonight ? "Tonight" : ChosenNight.words(night), shown));
        List<Section.Way> ways = new ArrayList<>();
        String which =
                request.to(PATH) + "?" + ChosenNight.WORD + "=" + night.id().number();
        if (onThisPage.size() < earlier.size()) {
            String from = "&" + BEFORE + "=" + onThisPage.get(0).seq();
            ways.add(new Section.Way(which + from, "Earlier events", false));
        }
        if (earlier.size() < all.size()) {
            ways.add(new Section.Way(which, "Newest events", false));
        }
        if (!ways.isEmpty()) {
            sections.add(new Section.Ways("", ways));
        }
        return sections;
    }

    /** The form of a measurement or a turn with its entries, for correction; tonight's only. */
    private static Optional<String> correction(PageRequest request, LoggedEvent logged) {
        if (logged.event() instanceof NightEvent.ScrewsTurned) {
            return Optional.of(address(request, NightForms.TURN, Map.of("instead-of", Long.toString(logged.seq()))));
        }
        if (logged.event() instanceof Correction.MeasurementCorrected again) {
            return correction(request, new LoggedEvent(again.seq(), logged.at(), again.meant()));
        }
        return logged.event() instanceof NightEvent.Measurement measurement
                ? Replacement.filled(logged.seq(), measurement)
                        .flatMap(filled -> CommandForms.of(filled).map(form -> address(request, form, filled.typed())))
                : Optional.empty();
    }

    private static String address(PageRequest request, CommandForm form, Map<String, String> values) {
        return request.to(Pages.path(form)) + "?"
                + values.entrySet().stream()
                        .sorted(Map.Entry.comparingByKey())
                        .map(value ->
                                value.getKey() + "=" + URLEncoder.encode(value.getValue(), StandardCharsets.UTF_8))
                        .collect(Collectors.joining("&"));
    }

    /** Only tonight's events can be undone: other nights stay as they were. */
    private static FormView undo(PageRequest request, LoggedEvent logged, boolean isTonight) {
        return isTonight
                ? Forms.fresh(request, NightForms.UNDO, Map.of("seq", Long.toString(logged.seq())))
                : Forms.unsendable(request, NightForms.UNDO);
    }
}
