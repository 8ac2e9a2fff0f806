package polewright.web.page;

import java.util.List;
import polewright.operations.OperationFailed;
import polewright.operations.practice.PracticeNight;
import polewright.report.text.PracticeWords;
import polewright.web.form.PageWording;
import polewright.web.session.PracticeAddress;
import polewright.web.view.Section;

/** The truth about a practice, and where the time was spent. */
final class DebriefPage implements Page {
    @Override
    public String path() {
        return PracticeAddress.DEBRIEF;
    }

    @Override
    public String name() {
        return "Debrief";
    }

    @Override
    public String menuPath() {
        return PracticeAddress.GAME;
    }

    @Override
    public List<Section> sections(PageRequest request) {
        try {
            PracticeNight practice = PracticeNight.ofNow(request.session().workbench());
            return List.of(new Section.Printed("Result", String.join("\n", PracticeWords.debrief(practice.debrief()))));
        } catch (OperationFailed none) {
            return List.of(
                    new Section.Words("Result", List.of(PageWording.GENERAL.of(String.valueOf(none.getMessage())))));
        }
    }
}
