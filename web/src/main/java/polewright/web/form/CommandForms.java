package polewright.web.form;

import java.util.List;
import java.util.stream.Stream;

/** All forms: one for each command that adds to the log and needs no file. */
public final class CommandForms {
    private static final List<CommandForm> ALL = Stream.of(
                    SightingForms.typed(),
                    List.of(SightingForms.CENTRE),
                    WorkForms.all(),
                    NightForms.all(),
                    SetupForms.all())
            .flatMap(List::stream)
            .toList();

    private CommandForms() {}

    /** The sightings that are typed in, the coarse ones first. */
    public static List<CommandForm> sightings() {
        return SightingForms.typed();
    }

    /** The forms of the practice. */
    public static List<CommandForm> practice() {
        return PracticeForms.all();
    }

    /** The forms of the laptop itself, which belong to no night. */
    public static List<CommandForm> laptop() {
        return List.of(DeviceForms.REVOKE);
    }

    /** The forms that add to a log. */
    public static List<CommandForm> all() {
        return ALL;
    }
}
