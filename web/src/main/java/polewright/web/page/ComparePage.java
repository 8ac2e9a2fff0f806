package polewright.web.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import polewright.planning.seasons.NightGap;
import polewright.planning.seasons.NightRecord;
import polewright.planning.seasons.Pier;
import polewright.report.text.CompareWords;
import polewright.session.NightSummary;
import polewright.web.view.Section;

/** Compares two nights. */
final class ComparePage implements Page {
    static final String PATH = "/nights/compare";

    private static final String OTHER = "with";

    @Override
    public String path() {
        return PATH;
    }

    @Override
    public String name() {
        return "Compare nights";
    }

    @Override
    public String menuPath() {
        return NightPage.PATH;
    }

    @Override
    public List<Section> sections(PageRequest request) {
        List<NightSummary> nights = request.session().nights();
        if (nights.size() < 2) {
            return List.of(new Section.Words("", List.of("Comparing needs two nights in the log.")));
        }
        Optional<NightSummary> one = ChosenNight.of(request);
        Optional<NightSummary> other = request.word(OTHER)
                .flatMap(number -> nights.stream()
                        .filter(night -> Long.toString(night.id().number()).equals(number))
                        .findFirst());
        List<Section> sections = new ArrayList<>();
        if (one.isPresent() && other.isPresent()) {
            sections.addAll(compared(request, one.get(), other.get()));
        }
        sections.add(new Section.Choosing(
                "Choose two",
                request.to(path()),
                List.of(
                        ChosenNight.select(request, ChosenNight.WORD, "This night", one),
                        ChosenNight.select(request, OTHER, "With this one", other.or(() -> before(nights, one)))),
                "Compare them"));
        sections.add(new Section.Ways("", List.of(new Section.Way(request.to(NightPage.PATH), "All nights", false))));
        return sections;
    }

    private static List<Section> compared(PageRequest request, NightSummary one, NightSummary other) {
        if (one.equals(other)) {
            return List.of(new Section.Words("", List.of("Those are the same night. Choose another below.")));
        }
        boolean isInOrder = !other.begunAt().isBefore(one.begunAt());
        NightRecord earlier = record(request, isInOrder ? one : other);
        NightRecord later = record(request, isInOrder ? other : one);
        NightGap gap = NightGap.between(
                earlier,
                later,
                request.session().nightsAt(Pier.of(earlier.begun())).records());
        List<CompareWords.Row> rows = CompareWords.rows(earlier, later);
        return List.of(
                new Section.Table(
                        "",
                        cells(rows.get(0)),
                        rows.stream().skip(1).map(ComparePage::cells).toList()),
                new Section.Words("", CompareWords.between(gap)));
    }

    private static NightRecord record(PageRequest request, NightSummary night) {
        return NightRecord.of(night.id(), request.session().events(night.id()));
    }

    private static List<String> cells(CompareWords.Row row) {
        return List.of(row.label(), row.earlier(), row.later());
    }

    /** The preceding night, with which a night is usually compared. */
    private static Optional<NightSummary> before(List<NightSummary> nights, Optional<NightSummary> one) {
        return nights.stream()
                .filter(night -> one.isPresent()
                        && night.begunAt().isBefore(one.get().begunAt())
                        && night.siteName().equals(one.get().siteName()))
                .findFirst();
    }
}
