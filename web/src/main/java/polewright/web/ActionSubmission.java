package polewright.web;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import polewright.operations.OperationFailed;
import polewright.operations.Workbench;
import polewright.operations.action.Action;
import polewright.operations.action.ArgumentRefused;
import polewright.operations.action.BeginningContext;
import polewright.operations.action.Effect;
import polewright.operations.action.Entries;
import polewright.operations.action.EntriesRefused;
import polewright.operations.action.LooksMistaken;
import polewright.operations.action.NightBeginning;
import polewright.operations.action.NightEntry;
import polewright.operations.device.PairedDevices;
import polewright.operations.practice.PracticeNight;
import polewright.operations.work.ImpossibleWork;
import polewright.report.text.BeginWords;
import polewright.report.text.DoubtWords;
import polewright.report.text.EventRemarks;
import polewright.report.text.ZoneRefusals;
import polewright.sky.InputRefused;
import polewright.store.LogChanged;
import polewright.store.NightLog;
import polewright.store.SubmissionKey;
import polewright.web.form.CommandForm;
import polewright.web.form.PageWording;
import polewright.web.session.NightSession;
import polewright.web.session.SubmissionOutcome;

/** Carries out the action of a posted form. */
final class ActionSubmission {
    private static final SubmissionOutcome DONE = new SubmissionOutcome.Logged(0, List.of());

    private ActionSubmission() {}

    static SubmissionOutcome of(
            NightSession session, CommandForm form, NightEntry.Sent sent, Map<String, String> filled) {
        Action action = form.action();
        PageWording wording = PageWording.of(form);
        try {
            Entries entries = form.entries(filled);
            return action.effect().accept(new Execution(session, action, entries, sent, wording));
        } catch (ArgumentRefused refused) {
            return refused(wording.argument(refused.argument().name()) + ": "
                    + wording.of(String.valueOf(refused.getMessage())));
        } catch (EntriesRefused refused) {
            return refused(wording.of(String.valueOf(refused.getMessage())));
        } catch (ImpossibleWork impossible) {
            return refused(wording.of(
                    String.valueOf(ZoneRefusals.of(impossible.outcome()).getMessage())));
        } catch (LooksMistaken doubtful) {
            return new SubmissionOutcome.ToBeConfirmed(List.of(sentence(wording.of(DoubtWords.of(doubtful.doubt())))));
        } catch (LogChanged changed) {
            return new SubmissionOutcome.Outdated(List.of(String.valueOf(changed.getMessage())));
        } catch (InputRefused refused) {
            String words = wording.of(String.valueOf(refused.getMessage()));
            return refused.isForNow() ? new SubmissionOutcome.NotNow(List.of(words)) : refused(words);
        } catch (OperationFailed failed) {
            return refused(wording.of(String.valueOf(failed.getMessage())));
        }
    }

    /** Carries out an action of the table. */
    private record Execution(
            NightSession session, Action action, Entries entries, NightEntry.Sent sent, PageWording wording)
            implements Effect.Visitor<SubmissionOutcome> {
        @Override
        public SubmissionOutcome entering(Effect.Entering effect) {
            Workbench bench = session.workbench();
            try (NightLog opened = session.openLog()) {
                NightEntry.Outcome outcome = NightEntry.add(
                        opened,
                        bench.now(),
                        bench.clock().getZone(),
                        sent,
                        action.timing(),
                        context -> NightEntry.Entered.of(action, effect, entries, context));
                if (outcome instanceof NightEntry.Logged logged) {
                    return new SubmissionOutcome.Logged(logged.first().seq(), notes(logged));
                }
                return new SubmissionOutcome.Logged(
                        ((NightEntry.AlreadyLogged) outcome).event().seq(), List.of());
            }
        }

        @Override
        public SubmissionOutcome beginning(Effect.Beginning effect) {
            Workbench bench = session.workbench();
            NightBeginning beginning = effect.begin(
                    entries,
                    new BeginningContext(
                            bench.defaultLog(),
                            bench.now(),
                            bench.clock().getZone(),
                            sent.once(),
                            true,
                            sent.isConfirmed()));
            List<String> notes = beginning instanceof NightBeginning.Begun begun
                    ? BeginWords.remarks(begun).stream()
                            .map(remark -> wording.of(remark.text()))
                            .toList()
                    : List.of();
            return new SubmissionOutcome.Logged(beginning.event().seq(), notes);
        }

        @Override
        public SubmissionOutcome beginningPractice(Effect.BeginningPractice effect) {
            PracticeNight.begin(session.workbench(), effect.scenario(entries), key());
            return DONE;
        }

        @Override
        public SubmissionOutcome practising(Effect.Practising effect) {
            PracticeNight practice = PracticeNight.ofNow(session.workbench());
            practice.perform(effect.action(entries, practice.state()), key());
            return DONE;
        }

        @Override
        public SubmissionOutcome revoking(Effect.Revoking effect) {
            new PairedDevices(session.workbench().dataFolder()).revoke(effect.device(entries));
            return DONE;
        }

        private Optional<String> key() {
            return sent.once().map(SubmissionKey::text);
        }

        private List<String> notes(NightEntry.Logged logged) {
            return EventRemarks.of(logged).stream()
                    .map(remark -> wording.of(remark.text()))
                    .toList();
        }
    }

    private static SubmissionOutcome refused(String words) {
        return new SubmissionOutcome.Refused(List.of(sentence(words)));
    }

    private static String sentence(String words) {
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }
}
