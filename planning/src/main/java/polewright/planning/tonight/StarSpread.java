package polewright.planning.tonight;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import polewright.mount.pointing.CentredStar;
import polewright.mount.pointing.PointingModel;
import polewright.mount.reach.PointingLimits;
import polewright.sky.angle.Angle;
import polewright.sky.place.AirlessDirection;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.ObservingMoment;

/**
 * Chooses the stars that leave the smallest go-to error over the reachable sky.
 *
 * <p>Cost of a set: ln of the root mean square remaining go-to error over the whole sky, plus each star's penalty, plus
 * 0.5 for two closer than 20° and 0.2 for all on one side of the meridian. Stars are added one by one at the lowest
 * cost; then each is exchanged for a better one as long as there is one.
 */
final class StarSpread {
    private static final int SHORTLIST = 20;
    private static final Angle TOO_NEAR = Angle.ofDegrees(20);
    private static final int ROUNDS = 2;

    private final List<HourAnglePlace> sky;
    private final PointingModel before;

    private StarSpread(List<HourAnglePlace> sky, PointingModel before) {
        this.sky = sky;
        this.before = before;
    }

    static StarSpread over(PointingLimits reach, ObservingMoment moment) {
        List<HourAnglePlace> all = new ArrayList<>();
        for (int altitudeDeg = 25; altitudeDeg <= 65; altitudeDeg += 40) {
            for (int azimuthDeg = 0; azimuthDeg < 360; azimuthDeg += 45) {
                all.add(moment.hourAngle(
                        AirlessDirection.of(Angle.ofDegrees(azimuthDeg), Angle.ofDegrees(altitudeDeg))));
            }
        }
        List<HourAnglePlace> reachable = all.stream().filter(reach::canReach).toList();
        return new StarSpread(reachable.isEmpty() ? all : reachable, PointingModel.unknown(moment.site()));
    }

    List<StarCandidate> best(List<StarCandidate> candidates, int count) {
        List<StarCandidate> shortlist =
                candidates.stream().limit(Math.max(SHORTLIST, count)).toList();
        List<StarCandidate> chosen = new ArrayList<>();
        PointingModel model = before;
        while (chosen.size() < Math.min(count, shortlist.size())) {
            StarCandidate next = cheapest(chosen, model, shortlist);
            chosen.add(next);
            model = with(model, next);
        }
        for (int round = 0; round < ROUNDS && exchange(chosen, shortlist); round++) {}
        return chosen;
    }

    /** Root mean square over the sky of the radius that contains 95 % of go-tos after centring all of these. */
    Angle radius95(List<StarCandidate> chosen) {
        PointingModel model = after(chosen);
        double squares = 0;
        for (HourAnglePlace place : sky) {
            squares += Math.pow(model.goToError(place).radius95().radians(), 2);
        }
        return new Angle(Math.sqrt(squares / sky.size()));
    }

    private boolean exchange(List<StarCandidate> chosen, List<StarCandidate> shortlist) {
        boolean isBetter = false;
        for (int i = 0; i < chosen.size(); i++) {
            List<StarCandidate> others = new ArrayList<>(chosen);
            StarCandidate present = others.remove(i);
            StarCandidate best = cheapest(others, after(others), shortlist);
            isBetter |= !best.equals(present);
            chosen.set(i, best);
        }
        return isBetter;
    }

    private StarCandidate cheapest(List<StarCandidate> chosen, PointingModel model, List<StarCandidate> shortlist) {
        return shortlist.stream()
                .filter(candidate -> !chosen.contains(candidate))
                .min(Comparator.comparingDouble(candidate -> cost(chosen, model, candidate)))
                .orElseThrow();
    }

    private double cost(List<StarCandidate> chosen, PointingModel model, StarCandidate added) {
        PointingModel after = with(model, added);
        double squares = 0;
        for (HourAnglePlace place : sky) {
            squares += Math.pow(after.goToError(place).rms().radians(), 2);
        }
        boolean isCrowded =
                chosen.stream().anyMatch(c -> c.seen().separation(added.seen()).compareTo(TOO_NEAR) < 0);
        boolean isOneSided = !chosen.isEmpty() && chosen.stream().allMatch(c -> isWest(c) == isWest(added));
        return 0.5 * Math.log(squares / sky.size()) + added.penalty() + (isCrowded ? 0.5 : 0) + (isOneSided ? 0.2 : 0);
    }

    private PointingModel after(List<StarCandidate> chosen) {
        PointingModel model = before;
        for (StarCandidate star : chosen) {
            model = with(model, star);
        }
        return model;
    }

    private static PointingModel with(PointingModel model, StarCandidate star) {
        return model.after(star.seen().place(), CentredStar.USUAL_SIGMA);
    }

    private static boolean isWest(StarCandidate candidate) {
        return candidate.seen().place().hourAngle().radians() > 0;
    }
}
