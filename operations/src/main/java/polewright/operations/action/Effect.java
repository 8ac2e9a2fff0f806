package polewright.operations.action;

import java.util.List;
import polewright.session.event.NightEvent;
import polewright.simulation.practice.PracticeAction;
import polewright.simulation.practice.PracticeState;
import polewright.simulation.practice.Scenario;

/** What carrying out an action does. */
public sealed interface Effect {
    <R> R accept(Visitor<R> visitor);

    /** One method for each kind of effect. */
    interface Visitor<R> {
        R entering(Entering effect);

        R beginning(Beginning effect);

        R beginningPractice(BeginningPractice effect);

        R practising(Practising effect);

        R revoking(Revoking effect);
    }

    /** It adds events to the last night. */
    @FunctionalInterface
    non-sealed interface Entering extends Effect {
        /**
         * The events, all logged or none.
         *
         * @throws polewright.sky.InputRefused if something was entered that cannot be used; other arguments are named
         *     in braces, {@code {per}}, other actions as {@code {do:clamp}}
         * @throws LooksMistaken if it looks like a mistake and is not confirmed
         */
        List<NightEvent> events(Entries entries, ActionContext context);

        @Override
        default <R> R accept(Visitor<R> visitor) {
            return visitor.entering(this);
        }
    }

    /** It begins a night. */
    @FunctionalInterface
    non-sealed interface Beginning extends Effect {
        /**
         * Begins it.
         *
         * @throws polewright.sky.InputRefused as for {@link Entering}; nothing is logged then
         * @throws LooksMistaken likewise
         */
        NightBeginning begin(Entries entries, BeginningContext context);

        @Override
        default <R> R accept(Visitor<R> visitor) {
            return visitor.beginning(this);
        }
    }

    /** It begins a practice. */
    @FunctionalInterface
    non-sealed interface BeginningPractice extends Effect {
        /**
         * What is practised.
         *
         * @throws polewright.sky.InputRefused as for {@link Entering}
         */
        Scenario scenario(Entries entries);

        @Override
        default <R> R accept(Visitor<R> visitor) {
            return visitor.beginningPractice(this);
        }
    }

    /** It acts on the simulated mount of the current practice, and logs nothing. */
    @FunctionalInterface
    non-sealed interface Practising extends Effect {
        /**
         * What is done.
         *
         * @param before the practice so far
         * @throws polewright.sky.InputRefused as for {@link Entering}
         */
        PracticeAction action(Entries entries, PracticeState before);

        @Override
        default <R> R accept(Visitor<R> visitor) {
            return visitor.practising(this);
        }
    }

    /** It revokes paired devices. */
    @FunctionalInterface
    non-sealed interface Revoking extends Effect {
        /** The name or id of a device, or {@code all}. */
        String device(Entries entries);

        @Override
        default <R> R accept(Visitor<R> visitor) {
            return visitor.revoking(this);
        }
    }
}
