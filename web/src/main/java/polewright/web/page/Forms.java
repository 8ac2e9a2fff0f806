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

    /** A form to fill in, with a new submission key each time it is shown. */
    public static FormView fresh(PageRequest request, CommandForm form, Map<String, String> values) {
        CommandForm shown = request.session()
                .tonight()
                .map(tonight -> RigChoices.of(form, tonight.state().situation().rig(), values))
                .orElse(form);
        return new FormView(
                        shown, action(request, form), randomKey(), night(request, form), values, 0, form.line(values))
                .with(Sketches.of(request, form, values));
    }

    /** A form that cannot be sent: it has no key and is not shown. */
    static FormView unsendable(PageRequest request, CommandForm form) {
        return new FormView(form, action(request, form), "", 0, Map.of(), 0, "");
    }

    /**
     * A form that confirms that the advice was followed. All devices show it under the same key, so that two people
     * who press it at once have done it once.
     *
     * @param night the number of the night
     * @param lastSeq the number of the last event: after another event the advice is another one
     */
    static FormView advised(
            PageRequest request, CommandForm form, Map<String, String> values, long night, long lastSeq) {
        return new FormView(
                form,
                action(request, form),
                "advised-" + night + "-" + lastSeq + "-" + form.id(),
                night,
                values,
                lastSeq,
                form.line(values));
    }

    /**
     * Where the equivalent command line for the entries of a form is requested: below the address to which it is
     * posted.
     */
    public static String asCommand(CommandForm form) {
        return "/do/" + form.id() + "/as-command";
    }

    private static long night(PageRequest request, CommandForm form) {
        return form.isOfOneNight() ? request.night() : 0;
    }

    private static String action(PageRequest request, CommandForm form) {
        String path = "/do/" + form.id();
        return form.kind() == CommandForm.Kind.NIGHT ? request.to(path) : path;
    }

    /** A key that identifies one submission. */
    static String randomKey() {
        byte[] bytes = new byte[KEY_BYTES];
        RANDOM.nextBytes(bytes);
        return HexFormat.of().formatHex(bytes);
    }
}
