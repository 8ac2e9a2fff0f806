package polewright.report.text;

import java.util.List;
import polewright.operations.action.Finding;
import polewright.session.event.NightEvent;

/**
 * What is remarkable about an entry, in words. Arguments are named in braces.
 *
 * @param begun where and when the night is
 */
public record FindingRemarks(NightEvent.Begun begun) implements Finding.Visitor<List<Remark>> {
    @Override
    public List<Remark> oddSite(Finding.OddSite finding) {
        return List.of(
                Remark.note(SiteWords.sentences(finding.site(), finding.zone().getId())));
    }

    @Override
    public List<Remark> followed(Finding.Followed finding) {
        return SunCaution.whileFollowed(finding.body(), begun, finding.from(), finding.length());
    }
}
