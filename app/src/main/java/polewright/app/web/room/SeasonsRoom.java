package polewright.app.web.room;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import polewright.app.web.NightDesk;
import polewright.app.web.view.Section;
import polewright.axis.drawing.Palette;
import polewright.night.log.NightSummary;

/** How pier and wedge move from night to night. */
final class SeasonsRoom implements Room {
    static final String PATH = "/nights/seasons";

    private static final String DRAWN = "Drawn: ";

    @Override
    public String path() {
        return PATH;
    }

    @Override
    public String name() {
        return "Seasons";
    }

    @Override
    public List<Section> sections(Asked asked) {
        Optional<NightSummary> night = ChosenNight.of(asked);
        List<Section> sections = new ArrayList<>();
        if (night.isPresent()) {
            sections.addAll(of(asked, night.get()));
        } else {
            sections.add(new Section.Words("", List.of("No night has begun yet.")));
        }
        sections.add(new Section.Ways("", List.of(new Section.Way(asked.to(NightRoom.PATH), "All nights", false))));
        return sections;
    }

    private static List<Section> of(Asked asked, NightSummary night) {
        NightDesk.Written written = asked.desk().writing(file -> {
            List<String> words = new ArrayList<>(
                    List.of("log", "seasons", "--night=" + night.id().number(), "--picture=" + file));
            if (asked.palette().equals(Palette.DARK)) {
                words.add("--dark");
            }
            return words;
        });
        if (!written.ran().isGood()) {
            return List.of(new Section.Words("", written.ran().complaints()));
        }
        List<Section> sections = new ArrayList<>();
        written.content().ifPresent(svg -> sections.add(new Section.Drawing("", svg)));
        // Where the picture was put for a moment is nothing to the page.
        sections.add(new Section.Printed(
                "Nights at this place with this rig",
                written.ran()
                        .out()
                        .lines()
                        .filter(line -> !line.startsWith(DRAWN))
                        .collect(Collectors.joining("\n"))));
        return sections;
    }
}
