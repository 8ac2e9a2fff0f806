package polewright.session.event;

/**
 * What is done for each kind of event outside this package. A new kind does not compile until every visitor has a method
 * for it.
 *
 * @param <R> the result
 */
public interface EventVisitor<R> extends MoveVisitor<R> {
    R begun(NightEvent.Begun event);

    R sightingTaken(NightEvent.SightingTaken event);

    R turnCorrected(Correction.TurnCorrected event);

    R measurementCorrected(Correction.MeasurementCorrected event);

    R rigCorrected(Correction.RigCorrected event);

    R siteCorrected(Correction.SiteCorrected event);

    R clockCorrected(Correction.ClockCorrected event);

    R allowanceSet(NightEvent.AllowanceSet event);

    R workSet(NightEvent.WorkSet event);

    R starCentred(NightEvent.StarCentred event);

    R horizonSet(NightEvent.HorizonSet event);

    R targetWanted(NightEvent.TargetWanted event);

    R sightingSkipped(NightEvent.SightingSkipped event);

    R noted(NightEvent.Noted event);

    R withdrawn(NightEvent.Withdrawn event);
}
