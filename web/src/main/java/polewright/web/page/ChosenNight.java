package polewright.web.page;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import polewright.session.NightSummary;
import polewright.web.session.NightSession.Tonight;
import polewright.web.view.Section;

/** The night that a page shows: the one named in its address, or the most recent one. */
public final class ChosenNight {
    /** Where a night is downloaded as a file. */
    public static final String DOWNLOAD = "/nights/download";

    /** Where a night is uploaded to be added to the log. */
    public static final String UPLOAD = "/nights/upload";

    /** The page of a night. */
    public static final String PAGE = "/nights";

    static final String WORD = "night";

    private ChosenNight() {}

    /** Empty if the address names a night that does not exist, or the log is empty. */
    public static Optional<NightSummary> of(PageRequest request) {
        List<NightSummary> nights = request.session().nights();
        Optional<String> named = request.word(WORD);
        if (named.isPresent()) {
            return nights.stream()
                    .filter(night -> Long.toString(night.id().number()).equals(named.get()))
                    .findFirst();
        }
        Optional<Long> tonight = request.session().tonight().map(Tonight::id).map(id -> id.number());
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

    /** A choice of all nights. */
    static Section.Select select(PageRequest request, String name, String label, Optional<NightSummary> chosen) {
        return new Section.Select(
                name,
                label,
                request.session().nights().stream()
                        .map(night -> new Section.Choice(
                                Long.toString(night.id().number()),
                                words(night),
                                chosen.filter(night::equals).isPresent()))
                        .toList());
    }
}
