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

/** Two nights side by side. */
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
    public List<Section> sections(PageRequest asked) {
        List<NightSummary> nights = asked.desk().nights();
        if (nights.size() < 2) {
            return List.of(new Section.Words("", List.of("Comparing needs two nights in the log.")));
        }
        Optional<NightSummary> one = ChosenNight.of(asked);
        Optional<NightSummary> other = asked.word(OTHER)
                .flatMap(number -> nights.stream()
                        .filter(night -> Long.toString(night.id().number()).equals(number))
                        .findFirst());
        List<Section> sections = new ArrayList<>();
        if (one.isPresent() && other.isPresent()) {
            sections.addAll(compared(asked, one.get(), other.get()));
        }
        sections.add(new Section.Choosing(
                "Choose two",
                asked.to(path()),
                List.of(
                        ChosenNight.select(asked, ChosenNight.WORD, "This night", one),
                        ChosenNight.select(asked, OTHER, "With this one", other.or(() -> before(nights, one)))),
                "Compare them"));
        sections.add(new Section.Ways("", List.of(new Section.Way(asked.to(NightPage.PATH), "All nights", false))));
        return sections;
    }

    private static List<Section> compared(PageRequest asked, NightSummary one, NightSummary other) {
        if (one.equals(other)) {
            return List.of(new Section.Words("", List.of("Those are the same night. Choose another below.")));
        }
        boolean isInOrder = !other.begunAt().isBefore(one.begunAt());
        NightRecord earlier = record(asked, isInOrder ? one : other);
        NightRecord later = record(asked, isInOrder ? other : one);
        NightGap gap = NightGap.between(
                earlier, later, asked.desk().nightsAt(Pier.of(earlier.begun())).records());
        List<CompareWords.Row> rows = CompareWords.rows(earlier, later);
        return List.of(
                new Section.Table(
                        "",
                        cells(rows.get(0)),
                        rows.stream().skip(1).map(ComparePage::cells).toList()),
                new Section.Words("", CompareWords.between(gap)));
    }

    private static NightRecord record(PageRequest asked, NightSummary night) {
        return NightRecord.of(night.id(), asked.desk().events(night.id()));
    }

    private static List<String> cells(CompareWords.Row row) {
        return List.of(row.label(), row.earlier(), row.later());
    }

    /** The night before it: the one that it is usually compared with. */
    private static Optional<NightSummary> before(List<NightSummary> nights, Optional<NightSummary> one) {
        return nights.stream()
                .filter(night -> one.isPresent()
                        && night.begunAt().isBefore(one.get().begunAt())
                        && night.siteName().equals(one.get().siteName()))
                .findFirst();
    }
}
