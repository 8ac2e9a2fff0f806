package polewright.session.event;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
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
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;
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

    /** Something in the sky or at the mount was measured. */
    sealed interface Measurement extends NightEvent {
        /** The time of the measurement, which may differ from that of its entry; for a drift, its start. */
        Instant seenAt();

        /** When the measurement was finished. */
        Instant endedAt();

        /** The same, measured later by a duration (earlier if negative). */
        NightEvent movedBy(Duration shift);

        /** Directions of a tube, a camera or an eye during it; empty if nothing looked at the sky. */
        List<LineOfSight> linesOfSight(Site site, Weather weather);
    }

    /** The axis was moved, or may have been. */
    sealed interface MountMove extends NightEvent {}

    /** Screws were turned, by a known or unknown amount. */
    sealed interface ScrewMove extends MountMove {}

    /** Something was stated or decided; nothing was measured or moved. */
    sealed interface Statement extends NightEvent {}

    /** An earlier event no longer counts as it was logged. */
    sealed interface Revision extends NightEvent {
        /** The number of the earlier event. */
        long seq();
    }

    /**
     * The night began. Always the first event, and the only one of its kind.
     *
     * @param siteName the user's name for the site
     */
    record Begun(String siteName, Site site, Weather weather, Rig rig, DiscAllowance allowance) implements Statement {
        // Closer to a pole of the Earth, azimuth is too ill-defined to set an axis, and no wedge tilts that far.
        private static final Angle HIGHEST_LATITUDE = Angle.ofDegrees(84);

        public Begun {
            if (!rig.kind().hasPolarAxis()) {
                throw new InputRefused(
                        "a " + rig.kind().words() + " has no polar axis to set",
                        "put the fork on a wedge, or use only where and ground tonight");
            }
            if (site.poleAltitude().compareTo(HIGHEST_LATITUDE) > 0) {
                throw new InputRefused(
                        "latitude " + PlainNumber.asTyped(site.latitude().degrees())
                                + " is beyond 84 degrees, where a wedge cannot be set by azimuth and altitude",
                        "check that latitude comes before longitude");
            }
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
        private static final double MOST_TURNS = 100;

        public ScrewsTurned {
            requireTurns("azimuth", azimuthTurns, azimuthBack);
            requireTurns("altitude", altitudeTurns, altitudeBack);
            requireSigma("azimuth", azimuthSigma);
            requireSigma("altitude", altitudeSigma);
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

        private static void requireSigma(String screw, double sigma) {
            if (!(sigma >= 0 && sigma <= MOST_TURNS)) {
                throw new InputRefused(
                        "an uncertainty of " + PlainNumber.asTyped(sigma) + " turns of the " + screw
                                + " screw is outside 0 to 100",
                        "give 1 sigma, or leave it out for turns counted by hand");
            }
        }

        private static void requireTurns(String screw, double turns, double back) {
            requireFew(screw, "", turns);
            requireFew(screw, " back", back);
            requireFew(screw, " there, before those back", turns - back);
        }

        private static void requireFew(String screw, String which, double turns) {
            if (!(Math.abs(turns) <= MOST_TURNS)) {
                throw new InputRefused(
                        PlainNumber.asTyped(turns) + " turns of the " + screw + " screw" + which + " are beyond 100",
                        "count whole turns and fractions, clockwise positive");
            }
        }
    }

    /**
     * An earlier turn was entered wrongly.
     *
     * @param seq the number of that turn
     * @param meant the actual turn
     */
    record TurnCorrected(long seq, ScrewsTurned meant) implements Revision {}

    /**
     * Screws were turned by an unknown amount after an earlier event, without being logged.
     *
     * @param seq the number of that event
     * @param azimuth whether the azimuth screw may have been turned
     * @param altitude whether the altitude screw may have been turned
     */
    record TurnNotLogged(long seq, boolean azimuth, boolean altitude) implements Revision, ScrewMove {
        public TurnNotLogged {
            if (!azimuth && !altitude) {
                throw new InputRefused("no screw was turned", "give the azimuth screw, the altitude screw or both");
            }
        }
    }

    /**
     * A measurement was entered wrongly.
     *
     * @param seq the number of that measurement
     * @param meant the actual measurement
     */
    record MeasurementCorrected(long seq, Measurement meant) implements Revision {}

    /** The rig was entered wrongly; the correction applies from the beginning of the night. */
    record RigCorrected(RigCorrection correction) implements Revision {
        @Override
        public long seq() {
            return BEGIN_SEQ;
        }
    }

    /** The site was entered wrongly; the correction applies from the beginning of the night. */
    record SiteCorrected(Site site) implements Revision {
        @Override
        public long seq() {
            return BEGIN_SEQ;
        }
    }

    /**
     * The computer's clock was wrong while earlier events were logged.
     *
     * @param seq the number of the first of them
     * @param last the number of the last of them
     * @param shift to be added to their times
     */
    record ClockCorrected(long seq, long last, Duration shift) implements Revision {
        // A clock with an empty battery starts at its year of manufacture.
        private static final Duration MOST = Duration.ofDays(366 * 50);

        public ClockCorrected {
            if (last < seq) {
                throw new InputRefused("event " + last + " is not after event " + seq, "give the first, then the last");
            }
            if (shift.isZero() || shift.abs().compareTo(MOST) > 0) {
                throw new InputRefused(
                        "a clock error of " + PlainNumber.of(shift.toSeconds() / 60.0)
                                + " minutes is more than the limit of 50 years",
                        "give the minutes to add, negative if the clock was ahead");
            }
        }
    }

    /** The wedge's clamps were tightened. */
    record Clamped() implements MountMove {}

    /** The wedge's clamps were loosened. */
    record Unclamped() implements MountMove {}

    /** The tripod or mount was knocked or moved by hand: the axis is unknown again. */
    record Knocked() implements MountMove {}

    /** From now on this tolerance applies, regardless of the work. */
    record AllowanceSet(DiscAllowance allowance) implements Statement {}

    /** From now on this is tonight's work, and it determines the tolerance. */
    record WorkSet(Work work) implements Statement {}

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
    }

    /** From now on this is the local horizon. */
    record HorizonSet(Horizon horizon) implements Statement {}

    /** A target for tonight. */
    record TargetWanted(SkyBody target) implements Statement {}

    /** The advised sighting cannot be taken: from now on another is advised. */
    record SightingSkipped(Skip skip) implements Statement {}

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
    }

    /**
     * An earlier event is withdrawn, as if it had not happened. Withdrawing a withdrawal restores the event.
     *
     * @param seq the number of the event withdrawn
     */
    record Withdrawn(long seq) implements Revision {}
}
