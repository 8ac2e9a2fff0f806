package polewright.web;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import polewright.operations.OperationFailed;
import polewright.operations.action.Action;
import polewright.operations.action.ArgumentRefused;
import polewright.operations.action.Entries;
import polewright.operations.action.LooksMistaken;
import polewright.operations.action.NightEntry;
import polewright.report.text.DoubtWords;
import polewright.report.text.EventRemarks;
import polewright.report.text.Remark;
import polewright.session.EntryTimeCheck;
import polewright.session.event.LoggedEvent;
import polewright.sky.InputRefused;
import polewright.store.LogChanged;
import polewright.store.NightLog;
import polewright.web.form.CommandForm;
import polewright.web.form.FormComplaint;
import polewright.web.form.PageWording;
import polewright.web.session.NightSession;
import polewright.web.session.SubmissionOutcome;

/** A posted form that enters an action of the table. */
final class ActionSubmission {
    private ActionSubmission() {}

    static SubmissionOutcome of(
            NightSession session, CommandForm form, Action action, NightEntry.Sent sent, Map<String, String> filled) {
        PageWording wording = new PageWording(form);
        try {
            Entries entries = form.entries(filled);
            try (NightLog opened = session.openLog()) {
                return outcome(NightEntry.add(
                        opened,
                        session.workbench().now(),
                        sent,
                        action.timing(),
                        context -> action.entering().events(entries, context)));
            }
        } catch (ArgumentRefused refused) {
            return refused(wording.argument(refused.argument().name()) + ": "
                    + wording.of(String.valueOf(refused.getMessage())));
        } catch (LooksMistaken doubtful) {
            return new SubmissionOutcome.ToBeConfirmed(List.of(sentence(DoubtWords.of(doubtful.doubt()))));
        } catch (LogChanged changed) {
            return new SubmissionOutcome.Outdated(List.of(String.valueOf(changed.getMessage())));
        } catch (InputRefused refused) {
            String words = worded(wording, refused);
            return refused.isForNow() ? new SubmissionOutcome.NotNow(List.of(words)) : refused(words);
        } catch (OperationFailed failed) {
            return refused(worded(wording, failed));
        }
    }

    private static SubmissionOutcome outcome(NightEntry.Outcome outcome) {
        if (outcome instanceof NightEntry.Logged logged) {
            return new SubmissionOutcome.Logged(logged.first().seq(), notes(logged));
        }
        return new SubmissionOutcome.Logged(
                ((NightEntry.AlreadyLogged) outcome).event().seq(), List.of());
    }

    private static List<String> notes(NightEntry.Logged logged) {
        Set<String> notes = new LinkedHashSet<>();
        for (LoggedEvent one : logged.events()) {
            EventRemarks.of(one.event(), logged.before()).stream()
                    .map(Remark::text)
                    .forEach(notes::add);
            EntryTimeCheck.of(logged.before(), one.event(), logged.at(), logged.now()).stream()
                    .map(EntryTimeSentences::of)
                    .forEach(notes::add);
        }
        return List.copyOf(notes);
    }

    private static SubmissionOutcome refused(String words) {
        return new SubmissionOutcome.Refused(List.of(sentence(words)));
    }

    /** A message that does not come from the table may name a command. */
    private static String worded(PageWording wording, RuntimeException failure) {
        return FormComplaint.withoutForm(wording.of(String.valueOf(failure.getMessage())));
    }

    private static String sentence(String words) {
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }
}
