package polewright.web.page;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import polewright.session.NightSummary;
import polewright.web.session.NightSession.Tonight;
import polewright.web.view.Section;

/** Which night a page is about: the one that its address names, or the one that was begun last. */
public final class ChosenNight {
    /** Where a night is handed out as a file. */
    public static final String DOWNLOAD = "/nights/download";

    /** Where one is sent to be added to the log. */
    public static final String UPLOAD = "/nights/upload";

    /** The page of a night. */
    public static final String PAGE = "/nights";

    static final String WORD = "night";

    private ChosenNight() {}

    /** Empty if the address names none that there is, or nothing was ever logged. */
    public static Optional<NightSummary> of(PageRequest asked) {
        List<NightSummary> nights = asked.desk().nights();
        Optional<String> named = asked.word(WORD);
        if (named.isPresent()) {
            return nights.stream()
                    .filter(night -> Long.toString(night.id().number()).equals(named.get()))
                    .findFirst();
        }
        Optional<Long> tonight = asked.desk().tonight().map(Tonight::id).map(id -> id.number());
        return Stream.concat(
                        nights.stream()
                                .filter(night ->
                                        tonight.isPresent() && night.id().number() == tonight.get()),
                        nights.stream())
                .findFirst();
    }

    /** {@code Night 3, 2026-01-10, Larkfell}. */
    static String words(NightSummary night) {
        return "Night " + night.id().number() + ", "
                + night.begunAt().toString().substring(0, 10) + ", " + night.siteName();
    }

    /** All nights to choose from. */
    static Section.Select select(PageRequest asked, String name, String label, Optional<NightSummary> chosen) {
        return new Section.Select(
                name,
                label,
                asked.desk().nights().stream()
                        .map(night -> new Section.Choice(
                                Long.toString(night.id().number()),
                                words(night),
                                chosen.filter(night::equals).isPresent()))
                        .toList());
    }
}
