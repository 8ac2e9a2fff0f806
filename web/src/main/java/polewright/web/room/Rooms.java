package polewright.web.room;

import java.util.ArrayList;
import java.util.List;
import polewright.web.form.CommandForm;
import polewright.web.form.CommandForms;
import polewright.web.form.NightForms;
import polewright.web.night.PracticeAddress;

/** All pages. */
public final class Rooms {
    /** Where the devices are listed that may come in. */
    public static final String DEVICES = "/devices";

    private static final List<Room> PLACES = List.of(
            new NowRoom(),
            new GroundRoom(),
            new WorkRoom(),
            new SightingsRoom(),
            new FramesRoom(),
            new FixRoom(),
            new TonightRoom(),
            new PointingRoom(),
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

    /** Where a form has a page of its own. */
    static String path(CommandForm form) {
        return form.equals(NightForms.BEGIN) ? "/begin" : "/sightings/" + form.id();
    }

    private static List<Room> all() {
        List<Room> all = new ArrayList<>(PLACES);
        all.add(DEBRIEF);
        all.add(new CompareRoom());
        all.add(new SeasonsRoom());
        all.add(new DevicesRoom());
        CommandForms.all().forEach(form -> all.add(of(form)));
        return List.copyOf(all);
    }
}
