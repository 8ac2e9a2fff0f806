package polewright.session;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import polewright.alignment.allowance.DiscAllowance;
import polewright.mount.pointing.CentredStar;
import polewright.mount.pointing.MountDisplay;
import polewright.session.event.Correction;
import polewright.session.event.EventKind;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.session.event.Skip;
import polewright.sky.angle.Angle;
import polewright.sky.place.Horizon;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/**
 * Random events of every kind from a seed, with values of every sort: round, odd, tiny, negative zero; south and north.
 */
public final class RandomEvents {
    private static final EventKind[] AFTER_THE_BEGIN =
            EnumSet.complementOf(EnumSet.of(EventKind.BEGIN)).toArray(EventKind[]::new);

    private final Random random;
    private final RandomValues values;
    private final RandomSightings sightings;
    private final RandomRigs rigs;
    private final RandomWork work;
    private final RandomCorrections corrections;

    public RandomEvents(long seed) {
        random = new Random(seed);
        values = new RandomValues(random);
        sightings = new RandomSightings(values);
        rigs = new RandomRigs(values);
        work = new RandomWork(values);
        corrections = new RandomCorrections(values, rigs);
    }

    /** A begin event and then {@code more} events, all kinds about equally often. */
    public List<LoggedEvent> night(int more) {
        List<LoggedEvent> night = new ArrayList<>();
        night.add(new LoggedEvent(1, values.instant(), event(EventKind.BEGIN, 1)));
        for (int seq = 2; seq <= more + 1; seq++) {
            EventKind kind = values.oneOf(AFTER_THE_BEGIN);
            if (seq == 2
                    && EnumSet.of(EventKind.WITHDRAW, EventKind.CORRECT_TURN, EventKind.CORRECT_CLOCK)
                            .contains(kind)) {
                kind = EventKind.NOTE;
            }
            night.add(new LoggedEvent(seq, values.instant(), event(kind, seq)));
        }
        return night;
    }

    /** An event of this kind that is valid at {@code seq}. */
    public NightEvent event(EventKind kind, int seq) {
        return switch (kind) {
            case BEGIN ->
                new NightEvent.Begun(
                        values.text(),
                        site(),
                        new Weather(values.number(0, 1100), values.number(-80, 60), values.number(0, 1)),
                        rigs.rig(),
                        allowance());
            case COMPASS, SCALE, BEARING, SHADOW, ALTITUDE, STILL_POINT, DRIFT, TRAIL, FRAMES, FIELD_DRIFT ->
                measured(seq, new NightEvent.SightingTaken(sightings.sighting(kind)));
            case TURN ->
                new NightEvent.ScrewsTurned(
                        values.number(-90, 90),
                        random.nextBoolean() ? 0.25 : -0.0,
                        random.nextBoolean() ? values.number(-10, 10) : -0.0,
                        random.nextBoolean() ? -0.75 : 0,
                        random.nextBoolean() ? values.number(0, 10) : 0,
                        random.nextBoolean() ? 0.25 : 0);
            case CORRECT_TURN ->
                new Correction.TurnCorrected(
                        2 + random.nextInt(Math.max(1, seq - 2)),
                        new NightEvent.ScrewsTurned(values.number(-90, 90), -0.0));
            case UNLOGGED_TURN ->
                random.nextBoolean()
                        ? new Correction.TurnNotLogged(1 + random.nextInt(seq - 1), true, random.nextBoolean())
                        : new Correction.TurnNotLogged(1 + random.nextInt(seq - 1), false, true);
            case CORRECT_CLOCK ->
                new Correction.ClockCorrected(
                        1, 1 + random.nextInt(seq - 1), Duration.ofSeconds(1 + random.nextInt(90_000)));
            case RIG -> new Correction.RigCorrected(corrections.correction());
            case SITE -> new Correction.SiteCorrected(site());
            case CLAMP -> new NightEvent.Clamped();
            case UNCLAMP -> new NightEvent.Unclamped();
            case KNOCK -> new NightEvent.Knocked();
            case ALLOW -> new NightEvent.AllowanceSet(allowance());
            case WORK -> new NightEvent.WorkSet(work.work());
            case CENTRE -> measured(seq, new NightEvent.StarCentred(centred()));
            case HORIZON -> new NightEvent.HorizonSet(horizon());
            case TARGET -> new NightEvent.TargetWanted(random.nextBoolean() ? values.star() : values.bodyButTheSun());
            case SKIP -> new NightEvent.SightingSkipped(skip());
            case NOTE -> new NightEvent.Noted(values.text());
            case WITHDRAW -> new NightEvent.Withdrawn(2 + random.nextInt(Math.max(1, seq - 2)));
        };
    }

    /** Occasionally as a replacement for an earlier one. */
    private NightEvent measured(int seq, NightEvent.Measurement measurement) {
        return seq > 2 && random.nextInt(5) == 0
                ? new Correction.MeasurementCorrected(2 + random.nextInt(seq - 2), measurement)
                : measurement;
    }

    private Skip skip() {
        Skip.Sighting sighting = values.oneOf(Skip.Sighting.values());
        Skip.Reason because = values.oneOf(Arrays.stream(Skip.Reason.values())
                .filter(reason -> reason.isOf(sighting))
                .toArray(Skip.Reason[]::new));
        return new Skip(
                sighting,
                because,
                sighting.isOfStar() && because != Skip.Reason.NO_OPTIC
                        ? Optional.of(random.nextBoolean() ? values.star() : values.bodyButTheSun())
                        : Optional.empty(),
                because == Skip.Reason.NO_OPTIC ? Optional.of(values.text()) : Optional.empty());
    }

    private Site site() {
        return new Site(values.signed(Math.toRadians(84)), values.signed(Math.PI), values.number(-500, 9000));
    }

    private CentredStar centred() {
        MountDisplay display = random.nextBoolean()
                ? new MountDisplay.HourAngle(values.signed(Math.PI), values.signed(Math.PI / 2))
                : new MountDisplay.RightAscension(
                        values.signed(2 * Math.PI), values.signed(Math.PI / 2), random.nextBoolean());
        return new CentredStar(
                values.instant(), values.bodyButTheSun(), display, random.nextBoolean(), values.sigma(5));
    }

    private Horizon horizon() {
        List<Horizon.Point> points = new ArrayList<>();
        for (int i = random.nextInt(5); i > 0; i--) {
            points.add(new Horizon.Point(values.signed(2 * Math.PI), new Angle(values.number(0, 1.5))));
        }
        return new Horizon(points);
    }

    private DiscAllowance allowance() {
        return new DiscAllowance(Angle.ofArcminutes(values.number(0.06, 590)));
    }
}
