package polewright.session.event;

/**
 * What is done for each kind of move of the axis. A new kind does not compile until every visitor has a method for it.
 *
 * @param <R> the result
 */
public interface MoveVisitor<R> {
    R screwsTurned(NightEvent.ScrewsTurned event);

    R turnNotLogged(Correction.TurnNotLogged event);

    R clamped(NightEvent.Clamped event);

    R unclamped(NightEvent.Unclamped event);

    R knocked(NightEvent.Knocked event);
}
