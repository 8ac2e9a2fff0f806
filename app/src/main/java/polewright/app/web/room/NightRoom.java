package polewright.app.web.room;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import polewright.app.text.EventWords;
import polewright.app.web.NightDesk.Tonight;
import polewright.app.web.form.CommandForms;
import polewright.app.web.view.Section;
import polewright.night.event.LoggedEvent;

/** Tonight's log, a note for it, and all nights. */
final class NightRoom implements Room {
    @Override
    public String path() {
        return "/nights";
    }

    @Override
    public String name() {
        return "Nights";
    }

    @Override
    public List<Section> sections(Asked asked) {
        List<Section> sections = new ArrayList<>();
        asked.desk().tonight().ifPresent(tonight -> sections.add(events(asked, tonight)));
        sections.add(new Section.Entry(Forms.fresh(asked, CommandForms.NOTE, Map.of())));
        PrintedRoom nights = new PrintedRoom(
                path(), name(), List.of(new PrintedRoom.Printing("All nights", List.of("log", "nights"))), List.of());
        sections.addAll(nights.sections(asked));
        sections.add(new Section.Ways("", List.of(new Section.Way(asked.to("/begin"), "Begin another night", false))));
        return sections;
    }

    private static Section events(Asked asked, Tonight tonight) {
        Set<Long> standing =
                tonight.state().standing().stream().map(LoggedEvent::seq).collect(Collectors.toSet());
        List<Section.EventView> shown = new ArrayList<>();
        for (LoggedEvent logged : tonight.events()) {
            shown.add(new Section.EventView(
                    logged.seq(),
                    logged.at().toString().replaceFirst("T(\\d\\d:\\d\\d).*", " $1 UTC"),
                    EventWords.of(logged.event()),
                    !standing.contains(logged.seq()) && !EventWords.isWithdrawal(logged),
                    Forms.fresh(asked, CommandForms.UNDO, Map.of("seq", Long.toString(logged.seq())))));
        }
        Collections.reverse(shown);
        return new Section.Events("Tonight", shown);
    }
}
