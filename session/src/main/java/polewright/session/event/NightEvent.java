package polewright.session.event;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.UnaryOperator;
import polewright.alignment.allowance.DiscAllowance;
import polewright.alignment.sighting.LineOfSight;
import polewright.alignment.sighting.Sighting;
import polewright.alignment.sighting.SiteCorrection;
import polewright.alignment.work.Work;
import polewright.mount.pointing.CentredStar;
import polewright.mount.rig.HandTurns;
import polewright.mount.rig.Rig;
import polewright.mount.rig.RigCorrection;
import polewright.sky.InputRefused;
import polewright.sky.body.SkyBody;
import polewright.sky.place.Horizon;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/**
 * Something that happened in a night. Events are only ever added; {@link Withdrawn} takes an earlier one back. Each
 * belongs to one of four sorts, so that code which depends on the sort cannot overlook a new event.
 */
public sealed interface NightEvent
        permits NightEvent.Measurement, NightEvent.MountMove, NightEvent.Statement, NightEvent.Revision {
    /** The number of each night's beginning. */
    long BEGIN_SEQ = 1;

    /** Calls the visitor's method for this kind. */
    <R> R accept(EventVisitor<R> visitor);

    /** The sighting, if it is one as first logged. */
    default Optional<Sighting> asSighting() {
        return Optional.empty();
    }

    /** The same event with its sighting changed, if it has one. */
    default NightEvent withSighting(UnaryOperator<Sighting> change) {
        return this;
    }

    /** Whether it moved the axis by more than clamps do: screws were turned, or the mount was knocked. */
    default boolean movesAxisFar() {
        return false;
    }

    /** Something in the sky or at the mount was measured. */
    sealed interface Measurement extends NightEvent {
        /** The time of the measurement, which may differ from that of its entry; for a drift, its start. */
        Instant seenAt();

        /** When the measurement was finished. */
        Instant endedAt();

        /** The same, measured later by a duration (earlier if negative). */
        NightEvent movedBy(Duration shift);

        @Override
        default Measurement withSighting(UnaryOperator<Sighting> change) {
            return this;
        }

        /** Directions of a tube, a camera or an eye during it; empty if nothing looked at the sky. */
        List<LineOfSight> linesOfSight(Site site, Weather weather);
    }

    /** The axis was moved, or may have been. */
    sealed interface MountMove extends NightEvent {
        /** Calls the visitor's method for this move. */
        <R> R acceptMove(MoveVisitor<R> visitor);

        @Override
        default <R> R accept(EventVisitor<R> visitor) {
            return acceptMove(visitor);
        }
    }

    /** Screws were turned, by a known or unknown amount. */
    sealed interface ScrewMove extends MountMove permits NightEvent.ScrewsTurned, Correction.TurnNotLogged {
        @Override
        default boolean movesAxisFar() {
            return true;
        }
    }

    /** Something was stated or decided; nothing was measured or moved. */
    sealed interface Statement extends NightEvent {}

    /** An earlier event no longer counts as it was logged. */
    sealed interface Revision extends NightEvent permits Correction, NightEvent.Withdrawn {
        /** The number of the earlier event. */
        long seq();

        /** The numbers of all events that it names; each must have happened before. */
        default List<Long> refersTo() {
            return List.of(seq());
        }
    }

    /**
     * The night began. Always the first event, and the only one of its kind.
     *
     * @param siteName the user's name for the site
     */
    record Begun(String siteName, Site site, Weather weather, Rig rig, DiscAllowance allowance) implements Statement {
        public Begun {
            EventBounds.requireSettable(rig, site);
        }

        /** The same beginning with a corrected rig. */
        public Begun with(RigCorrection correction) {
            return new Begun(siteName, site, weather, correction.appliedTo(rig), allowance);
        }

        /** The same beginning at a corrected site. Weather that was only the default follows the height. */
        public Begun at(Site corrected) {
            Weather there = weather.equals(Weather.standardAt(site.heightMetres()))
                    ? Weather.standardAt(corrected.heightMetres())
                    : weather;
            return new Begun(siteName, corrected, there, rig, allowance);
        }

        /** From this site to the one of a corrected beginning. */
        public SiteCorrection siteCorrectedTo(Begun corrected) {
            return new SiteCorrection(site, weather, corrected.site, corrected.weather);
        }

        @Override
        public <R> R accept(EventVisitor<R> visitor) {
            return visitor.begun(this);
        }
    }

    /** A measurement was made. */
    record SightingTaken(Sighting sighting) implements Measurement {
        @Override
        public Instant seenAt() {
            return sighting.at();
        }

        @Override
        public Instant endedAt() {
            return sighting.ended();
        }

        @Override
        public NightEvent movedBy(Duration shift) {
            return new SightingTaken(sighting.movedBy(shift));
        }

        @Override
        public List<LineOfSight> linesOfSight(Site site, Weather weather) {
            return sighting.linesOfSight(site, weather);
        }

        @Override
        public <R> R accept(EventVisitor<R> visitor) {
            return visitor.sightingTaken(this);
        }

        @Override
        public Optional<Sighting> asSighting() {
            return Optional.of(sighting);
        }

        @Override
        public Measurement withSighting(UnaryOperator<Sighting> change) {
            return new SightingTaken(change.apply(sighting));
        }
    }

    /**
     * Screws of the wedge were turned straight, or past the goal and back so that they finish against their backlash.
     *
     * @param azimuthTurns of the azimuth screw, all legs together, clockwise positive
     * @param altitudeTurns of the altitude screw, all legs together, clockwise positive
     * @param azimuthBack the last leg of the azimuth screw, clockwise positive, 0 if turned straight: the first leg was
     *     {@code azimuthTurns − azimuthBack}
     * @param altitudeBack the same for the altitude screw
     * @param azimuthSigma 1 sigma of {@code azimuthTurns} if they were derived from camera frames of the moving axis; 0
     *     if they were counted
     * @param altitudeSigma the same for the altitude screw
     */
    record ScrewsTurned(
            double azimuthTurns,
            double altitudeTurns,
            double azimuthBack,
            double altitudeBack,
            double azimuthSigma,
            double altitudeSigma)
            implements ScrewMove {
        public ScrewsTurned {
            EventBounds.requireTurns("azimuth", azimuthTurns, azimuthBack);
            EventBounds.requireTurns("altitude", altitudeTurns, altitudeBack);
            EventBounds.requireSigma("azimuth", azimuthSigma);
            EventBounds.requireSigma("altitude", altitudeSigma);
            // An absent leg is not written, whatever the sign of its zero.
            azimuthBack = azimuthBack == 0 ? 0 : azimuthBack;
            altitudeBack = altitudeBack == 0 ? 0 : altitudeBack;
            if (azimuthTurns == 0 && altitudeTurns == 0 && azimuthBack == 0 && altitudeBack == 0) {
                throw new InputRefused("no screw was turned", "give turns of the azimuth or the altitude screw");
            }
        }

        /** Turned straight. */
        public ScrewsTurned(double azimuthTurns, double altitudeTurns) {
            this(azimuthTurns, altitudeTurns, 0, 0);
        }

        /** Counted by hand. */
        public ScrewsTurned(double azimuthTurns, double altitudeTurns, double azimuthBack, double altitudeBack) {
            this(azimuthTurns, altitudeTurns, azimuthBack, altitudeBack, 0, 0);
        }

        public ScrewsTurned(HandTurns azimuth, HandTurns altitude) {
            this(azimuth.net(), altitude.net(), azimuth.back(), altitude.back(), azimuth.sigma(), altitude.sigma());
        }

        public HandTurns azimuth() {
            return new HandTurns(azimuthTurns, azimuthBack, azimuthSigma);
        }

        public HandTurns altitude() {
            return new HandTurns(altitudeTurns, altitudeBack, altitudeSigma);
        }

        /** Whether these turns were derived from camera frames instead of counted. */
        public boolean isSeenByFrames() {
            return azimuthSigma > 0 || altitudeSigma > 0;
        }

        @Override
        public <R> R acceptMove(MoveVisitor<R> visitor) {
            return visitor.screwsTurned(this);
        }
    }

    /** The wedge's clamps were tightened. */
    record Clamped() implements MountMove {
        @Override
        public <R> R acceptMove(MoveVisitor<R> visitor) {
            return visitor.clamped(this);
        }
    }

    /** The wedge's clamps were loosened. */
    record Unclamped() implements MountMove {
        @Override
        public <R> R acceptMove(MoveVisitor<R> visitor) {
            return visitor.unclamped(this);
        }
    }

    /** The tripod or mount was knocked or moved by hand: the axis is unknown again. */
    record Knocked() implements MountMove {
        @Override
        public <R> R acceptMove(MoveVisitor<R> visitor) {
            return visitor.knocked(this);
        }

        @Override
        public boolean movesAxisFar() {
            return true;
        }
    }

    /** From now on this tolerance applies, regardless of the work. */
    record AllowanceSet(DiscAllowance allowance) implements Statement {
        @Override
        public <R> R accept(EventVisitor<R> visitor) {
            return visitor.allowanceSet(this);
        }
    }

    /** From now on this is tonight's work, and it determines the tolerance. */
    record WorkSet(Work work) implements Statement {
        @Override
        public <R> R accept(EventVisitor<R> visitor) {
            return visitor.workSet(this);
        }
    }

    /** A star was centred, and the mount's reading noted. */
    record StarCentred(CentredStar centred) implements Measurement {
        @Override
        public Instant seenAt() {
            return centred.at();
        }

        @Override
        public Instant endedAt() {
            return centred.at();
        }

        @Override
        public NightEvent movedBy(Duration shift) {
            return new StarCentred(centred.movedBy(shift));
        }

        @Override
        public List<LineOfSight> linesOfSight(Site site, Weather weather) {
            return List.of(LineOfSight.atBody(centred.star(), centred.at(), site, weather));
        }

        @Override
        public <R> R accept(EventVisitor<R> visitor) {
            return visitor.starCentred(this);
        }
    }

    /** From now on this is the local horizon. */
    record HorizonSet(Horizon horizon) implements Statement {
        @Override
        public <R> R accept(EventVisitor<R> visitor) {
            return visitor.horizonSet(this);
        }
    }

    /** A target for tonight. */
    record TargetWanted(SkyBody target) implements Statement {
        @Override
        public <R> R accept(EventVisitor<R> visitor) {
            return visitor.targetWanted(this);
        }
    }

    /** The advised sighting cannot be taken: from now on another is advised. */
    record SightingSkipped(Skip skip) implements Statement {
        @Override
        public <R> R accept(EventVisitor<R> visitor) {
            return visitor.sightingSkipped(this);
        }
    }

    /** A remark; changes nothing. */
    record Noted(String text) implements Statement {
        /** Maximum length of a note, characters. Older logs may contain longer ones. */
        public static final int LONGEST = 4000;

        public Noted {
            if (text.isBlank()) {
                throw new InputRefused("the note is empty", "write something");
            }
        }

        /** Refuses a note that is too long to be logged. */
        public void requireShortEnough() {
            if (text.length() > LONGEST) {
                throw new InputRefused(
                        String.format(
                                Locale.ROOT,
                                "the note has %,d characters, and a note may have %,d",
                                text.length(),
                                LONGEST),
                        "write it as several notes");
            }
        }

        @Override
        public <R> R accept(EventVisitor<R> visitor) {
            return visitor.noted(this);
        }
    }

    /**
     * An earlier event is withdrawn, as if it had not happened. Withdrawing a withdrawal restores the event.
     *
     * @param seq the number of the event withdrawn
     */
    record Withdrawn(long seq) implements Revision {
        @Override
        public <R> R accept(EventVisitor<R> visitor) {
            return visitor.withdrawn(this);
        }
    }
}
