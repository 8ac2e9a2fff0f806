package polewright.report.text;

import java.util.List;
import polewright.operations.action.EntryNotice;
import polewright.session.event.NightEvent;

/**
 * What is remarkable about an entry, in words. Arguments are named in braces.
 *
 * @param begun where and when the night is
 */
public record NoticeRemarks(NightEvent.Begun begun) implements EntryNotice.Visitor<List<Remark>> {
    @Override
    public List<Remark> oddSite(EntryNotice.OddSite notice) {
        return List.of(
                Remark.note(SiteWords.sentences(notice.site(), notice.zone().getId())));
    }

    @Override
    public List<Remark> followed(EntryNotice.Followed notice) {
        return SunCaution.whileFollowed(notice.body(), begun, notice.from(), notice.length());
    }
}
