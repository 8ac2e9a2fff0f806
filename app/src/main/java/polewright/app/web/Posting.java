package polewright.app.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import polewright.app.web.form.CommandForm;
import polewright.night.log.SubmissionKey;
import polewright.sky.InputRefused;

/** A form that was posted, as the command that it stands for. */
final class Posting {
    private static final Pattern SEQ = Pattern.compile("\"seq\":(\\d+)");
    private static final Pattern TIME = Pattern.compile("\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d:\\d\\d(\\.\\d+)?Z");

    private Posting() {}

    /**
     * Runs it once, however often it is sent.
     *
     * @param filled the fields, and {@code key}, {@code done-at}, {@code if-last-is}
     */
    static Posted of(NightDesk desk, CommandForm form, Map<String, String> filled) {
        try {
            SubmissionKey key = new SubmissionKey(filled.getOrDefault("key", ""));
            List<String> words = new ArrayList<>(form.words(filled));
            int after = form.command().size();
            words.add(after, "--json");
            if (!form.kind().keyOption().isEmpty()) {
                words.add(after, "--" + form.kind().keyOption() + "=" + key.text());
            }
            doneAt(form, filled).ifPresent(at -> words.add(after, "--at=" + at));
            if (isOutdated(desk, filled) && !desk.wasSent(key)) {
                return new Posted.Outdated();
            }
            Ran ran = desk.run(words);
            return ran.isGood() ? new Posted.Logged(seq(ran.out())) : new Posted.Refused(ran.complaints());
        } catch (InputRefused refused) {
            return new Posted.Refused(List.of(String.valueOf(refused.getMessage())));
        }
    }

    /** When it was done, if it could not be sent at once; by the laptop's clock, which the page has compared. */
    private static Optional<String> doneAt(CommandForm form, Map<String, String> filled) {
        String at = filled.getOrDefault("done-at", "");
        return form.takesTime() && TIME.matcher(at).matches() ? Optional.of(at) : Optional.empty();
    }

    private static boolean isOutdated(NightDesk desk, Map<String, String> filled) {
        String known = filled.getOrDefault("if-last-is", "0");
        if (!known.matches("[1-9]\\d{0,8}")) {
            return false;
        }
        return desk.tonight()
                .map(tonight -> tonight.lastSeq() != Long.parseLong(known))
                .orElse(true);
    }

    private static long seq(String json) {
        Matcher seq = SEQ.matcher(json);
        return seq.find() ? Long.parseLong(seq.group(1)) : 0;
    }
}
