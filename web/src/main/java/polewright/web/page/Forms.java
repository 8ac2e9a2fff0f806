package polewright.web.page;

import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.Map;
import polewright.web.form.CommandForm;
import polewright.web.form.RigChoices;
import polewright.web.view.FormView;

/** Forms with their keys. */
public final class Forms {
    private static final SecureRandom RANDOM = new SecureRandom();
    private static final int KEY_BYTES = 16;

    private Forms() {}

    /** A form to fill in: each time it is shown is another sending. */
    public static FormView fresh(PageRequest asked, CommandForm form, Map<String, String> values) {
        CommandForm shown = asked.desk()
                .tonight()
                .map(tonight -> RigChoices.of(form, tonight.state().situation().rig(), values))
                .orElse(form);
        return new FormView(shown, action(asked, form), randomKey(), night(asked, form), values, 0, form.line(values))
                .with(Sketches.of(asked, form, values));
    }

    /** A form that cannot be sent: it has no key, and is not shown. */
    static FormView unsendable(PageRequest asked, CommandForm form) {
        return new FormView(form, action(asked, form), "", 0, Map.of(), 0, "");
    }

    /**
     * A form that says that the advice was followed. All devices show it under one key, so that two people who press it
     * at once have done one thing.
     *
     * @param night the number of the night
     * @param lastSeq the number of the last event: another one, and it is another advice
     */
    static FormView advised(PageRequest asked, CommandForm form, Map<String, String> values, long night, long lastSeq) {
        return new FormView(
                form,
                action(asked, form),
                "advised-" + night + "-" + lastSeq + "-" + form.id(),
                night,
                values,
                lastSeq,
                form.line(values));
    }

    /** Where the command of a form is asked for, given what is filled in: beneath where it is posted. */
    public static String asCommand(CommandForm form) {
        return "/do/" + form.id() + "/as-command";
    }

    private static long night(PageRequest asked, CommandForm form) {
        return form.isOfOneNight() ? asked.night() : 0;
    }

    private static String action(PageRequest asked, CommandForm form) {
        String path = "/do/" + form.id();
        return form.kind() == CommandForm.Kind.NIGHT ? asked.to(path) : path;
    }

    /** What one sending is known by. */
    static String randomKey() {
        byte[] bytes = new byte[KEY_BYTES];
        RANDOM.nextBytes(bytes);
        return HexFormat.of().formatHex(bytes);
    }
}
