package polewright.mount.pointing;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import polewright.sky.angle.Angle;
import polewright.sky.body.Ephemeris;
import polewright.sky.body.FixedStar;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.time.SkyTime;

/** The usual mistakes in logging a centring, each tested against the model of the other stars. */
record LikelyMistakes(List<FixedStar> named, boolean isAsked) {
    static final LikelyMistakes NOT_ASKED = new LikelyMistakes(List.of(), false);

    /** χ² with 2 degrees of freedom that chance exceeds once in a thousand, the same threshold as for outliers. */
    private static final double FITS = 13.816;

    private static final List<Integer> HOURS = List.of(1, -1, 2, -2, 12, -12);
    private static final double NEAR_DEG = 5;
    private static final int NEAREST = 5;
    private static final double SECONDS_PER_RADIAN = 86164.0905 / (2 * Math.PI);
    private static final int LONGEST_MINUTES = 14 * 60;

    static LikelyMistakes among(List<FixedStar> named) {
        return new LikelyMistakes(named, true);
    }

    /**
     * The mistakes that would make it fit, best first; none if not requested.
     *
     * @param asEntered the moment of the star
     */
    List<CentringMistake> of(int index, CentredStar star, ObservingMoment asEntered, PointingModel others) {
        if (!isAsked) {
            return List.of();
        }
        List<CentringMistake> fitting = new ArrayList<>();
        for (CentringMistake tried : all(index, star, asEntered, others)) {
            CentredStar meant = tried.meant();
            ObservingMoment moment = meant.at().equals(star.at()) ? asEntered : asEntered.at(SkyTime.of(meant.at()));
            if (meant.isUp(moment)) {
                double square = others.surprise(meant.reduced(moment));
                if (square < FITS) {
                    fitting.add(new CentringMistake(index, tried.cause(), meant, square));
                }
            }
        }
        fitting.sort(Comparator.comparingDouble(CentringMistake::square));
        return fitting;
    }

    private List<CentringMistake> all(int index, CentredStar star, ObservingMoment asEntered, PointingModel others) {
        List<CentringMistake> all = new ArrayList<>();
        all.add(tried(
                index,
                star.isThroughPole() ? "the tube had not gone through the pole" : "the tube had gone through the pole",
                star.withThroughPole(!star.isThroughPole())));
        misreadDisplays(star.display()).forEach(d -> all.add(tried(index, d.cause(), star.withDisplay(d.display()))));
        for (int hours : HOURS) {
            all.add(tried(
                    index, "the time was " + hours(hours), star.withAt(star.at().plus(Duration.ofHours(hours)))));
        }
        if (star.display() instanceof MountDisplay.HourAngle) {
            all.addAll(otherMinute(index, star, asEntered, others));
        }
        all.addAll(otherStars(index, star, asEntered, others));
        return all;
    }

    private static CentringMistake tried(int index, String cause, CentredStar meant) {
        return new CentringMistake(index, cause, meant, Double.POSITIVE_INFINITY);
    }

    static String hours(int hours) {
        int count = Math.abs(hours);
        return (count == 1 ? "1 hour" : count + " hours") + (hours > 0 ? " later" : " earlier");
    }

    private record Misread(String cause, MountDisplay display) {}

    private static List<Misread> misreadDisplays(MountDisplay display) {
        List<Misread> misread = new ArrayList<>();
        Angle dec = display.declination();
        if (display instanceof MountDisplay.RightAscension read) {
            Angle ra = read.rightAscension();
            boolean fixed = read.isJ2000();
            misread.add(new Misread(
                    fixed ? "the display was of date, not J2000" : "the display was J2000, not of date",
                    new MountDisplay.RightAscension(ra, dec, !fixed)));
            misread.add(new Misread(
                    "its declination was " + sign(dec), new MountDisplay.RightAscension(ra, dec.negated(), fixed)));
            misread.add(new Misread(
                    "its right ascension was in hours, not degrees",
                    new MountDisplay.RightAscension(ra.times(15), dec, fixed)));
            misread.add(new Misread(
                    "its right ascension was in degrees, not hours",
                    new MountDisplay.RightAscension(ra.times(1 / 15.0), dec, fixed)));
        } else if (display instanceof MountDisplay.HourAngle read) {
            Angle hourAngle = read.hourAngle();
            misread.add(new Misread(
                    "its declination was " + sign(dec), new MountDisplay.HourAngle(hourAngle, dec.negated())));
            misread.add(new Misread(
                    "its hour angle was the other side of the meridian",
                    new MountDisplay.HourAngle(hourAngle.negated(), dec)));
            misread.add(new Misread(
                    "its hour angle was in hours, not degrees", new MountDisplay.HourAngle(hourAngle.times(15), dec)));
            misread.add(new Misread(
                    "its hour angle was in degrees, not hours",
                    new MountDisplay.HourAngle(hourAngle.times(1 / 15.0), dec)));
        }
        return misread;
    }

    private static String sign(Angle declination) {
        return declination.radians() > 0 ? "south, with a minus" : "north, without a minus";
    }

    /** The minute at which the star was where the tube pointed according to the model of the others. */
    private List<CentringMistake> otherMinute(
            int index, CentredStar star, ObservingMoment asEntered, PointingModel others) {
        Centring centring = star.reduced(asEntered);
        HourAnglePlace looks = ForkModel.looksAt(others.site(), others.terms(), centring.reading());
        double seconds = SECONDS_PER_RADIAN
                * looks.hourAngle()
                        .minus(centring.seen().hourAngle())
                        .wrappedSigned()
                        .radians();
        long minutes = Math.round(seconds / 60);
        boolean isTriedAnyway = HOURS.stream().anyMatch(h -> Math.abs(seconds - h * 3600.0) < 90);
        if (isTriedAnyway || minutes == 0 || Math.abs(minutes) > LONGEST_MINUTES) {
            return List.of();
        }
        String size = Math.abs(minutes) < 60
                ? Math.abs(minutes) + " min"
                : String.format(Locale.ROOT, "%d h %02d min", Math.abs(minutes) / 60, Math.abs(minutes) % 60);
        return List.of(tried(
                index,
                "the time was " + size + (minutes > 0 ? " later" : " earlier"),
                star.withAt(star.at().plusMillis(Math.round(seconds * 1000)))));
    }

    private List<CentringMistake> otherStars(
            int index, CentredStar star, ObservingMoment asEntered, PointingModel others) {
        HourAnglePlace looks = ForkModel.looksAt(
                others.site(), others.terms(), star.reduced(asEntered).reading());
        return named.stream()
                .filter(other -> !other.label().equals(star.star().label()))
                .map(other -> new Near(
                        other,
                        SkyOffset.between(looks, asEntered.hourAngle(Ephemeris.apparent(other, asEntered)))
                                .distance()))
                .filter(near -> near.distance().degrees() < NEAR_DEG)
                .sorted(Comparator.comparing(Near::distance))
                .limit(NEAREST)
                .map(near -> tried(index, "the star was " + near.star().label(), star.withStar(near.star())))
                .toList();
    }

    private record Near(FixedStar star, Angle distance) {}
}
