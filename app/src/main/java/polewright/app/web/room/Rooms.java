package polewright.app.web.room;

import java.util.ArrayList;
import java.util.List;
import polewright.app.web.PracticeAddress;
import polewright.app.web.form.CommandForm;
import polewright.app.web.form.CommandForms;

/** All pages. */
public final class Rooms {
    private static final List<Room> PLACES = List.of(
            new NowRoom(),
            new PrintedRoom(
                    "/ground",
                    "Ground",
                    List.of(new PrintedRoom.Printing("Setting down", List.of("ground"))),
                    List.of(CommandForms.COMPASS, CommandForms.SCALE)),
            new WorkRoom(),
            new SightingsRoom(),
            new FixRoom(),
            new PrintedRoom(
                    "/tonight",
                    "Tonight",
                    List.of(
                            new PrintedRoom.Printing("The night", List.of("tonight")),
                            new PrintedRoom.Printing("Stars to align on", List.of("stars"))),
                    List.of(CommandForms.TARGET)),
            new PrintedRoom(
                    "/pointing",
                    "Pointing",
                    List.of(new PrintedRoom.Printing("Centred so far", List.of("pointing"))),
                    List.of(CommandForms.CENTRE)),
            new NightRoom(),
            new RigRoom(),
            new PracticeRoom());
    private static final Room DEBRIEF = new PrintedRoom(
            PracticeAddress.DEBRIEF,
            "Debrief",
            List.of(new PrintedRoom.Printing("What it came to", List.of("practice", "debrief"))),
            List.of());
    private static final List<Room> ALL = all();

    private Rooms() {}

    /** Those that are listed on every page, in the order of a night. */
    public static List<Room> places() {
        return PLACES;
    }

    /** Those, those that a night leads to, and a page for each form. */
    public static List<Room> everyone() {
        return ALL;
    }

    /** The page on which a form stands alone: there it is shown again when something is wrong with it. */
    public static Room of(CommandForm form) {
        return new FormRoom(path(form), form);
    }

    private static String path(CommandForm form) {
        return form.equals(CommandForms.BEGIN) ? "/begin" : "/sightings/" + form.id();
    }

    private static List<Room> all() {
        List<Room> all = new ArrayList<>(PLACES);
        all.add(DEBRIEF);
        all.add(new CompareRoom());
        all.add(new SeasonsRoom());
        CommandForms.all().forEach(form -> all.add(of(form)));
        return List.copyOf(all);
    }
}
