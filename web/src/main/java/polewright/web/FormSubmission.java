package polewright.web;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import polewright.operations.action.NightEntry;
import polewright.session.NightId;
import polewright.sky.InputRefused;
import polewright.store.KnownState;
import polewright.store.SubmissionKey;
import polewright.web.form.CommandForm;
import polewright.web.session.NightSession;
import polewright.web.session.SubmissionOutcome;
import polewright.web.view.FormView;

/** A posted form. */
public final class FormSubmission {
    private static final Pattern NUMBER = Pattern.compile("[1-9]\\d{0,8}");
    private static final String NIGHT = "night";
    private static final String IF_LAST_IS = "if-last-is";
    private static final Pattern TIME = Pattern.compile("\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d:\\d\\d(\\.\\d+)?Z");

    private FormSubmission() {}

    /**
     * Carries out its action once, however often it is sent.
     *
     * @param filled the form's fields, and {@code key}, {@code done-at}, {@code night}, {@code if-last-is}
     */
    public static SubmissionOutcome of(NightSession session, CommandForm form, Map<String, String> filled) {
        try {
            SubmissionKey key = new SubmissionKey(filled.getOrDefault("key", ""));
            return ActionSubmission.of(session, form, sent(form, key, filled), filled);
        } catch (InputRefused refused) {
            return new SubmissionOutcome.Refused(List.of(String.valueOf(refused.getMessage())));
        }
    }

    private static NightEntry.Sent sent(CommandForm form, SubmissionKey key, Map<String, String> filled) {
        KnownState known = form.isOfOneNight()
                ? new KnownState(
                        number(filled, NIGHT).map(night -> new NightId(Long.parseLong(night))),
                        number(filled, IF_LAST_IS).stream()
                                .mapToLong(Long::parseLong)
                                .findFirst())
                : KnownState.NOTHING;
        return new NightEntry.Sent(
                Optional.of(key),
                known,
                doneAt(form, filled).map(Instant::parse),
                filled.containsKey(FormView.CONFIRMED));
    }

    /**
     * When the action was done, if it could not be sent at once: by the laptop's clock, with which the page has
     * compared its own.
     */
    private static Optional<String> doneAt(CommandForm form, Map<String, String> filled) {
        String at = filled.getOrDefault("done-at", "");
        return form.takesTime() && TIME.matcher(at).matches() ? Optional.of(at) : Optional.empty();
    }

    private static Optional<String> number(Map<String, String> filled, String name) {
        String number = filled.getOrDefault(name, "");
        if (!number.isEmpty() && !NUMBER.matcher(number).matches()) {
            throw new InputRefused("the state of the page cannot be read", "reload the page, then press again");
        }
        return Optional.of(number).filter(text -> !text.isEmpty());
    }

    /** Whether the form was submitted unchanged, by pressing the button of the advice, rather than filled in. */
    static boolean confirmsAdvice(Map<String, String> filled) {
        return filled.containsKey(IF_LAST_IS);
    }
}
