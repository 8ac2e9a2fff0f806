package polewright.axis.reach;

import java.util.Optional;
import polewright.axis.rig.Rig;
import polewright.sky.angle.Angle;
import polewright.sky.place.Horizon;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.Site;

/** What a rig at a site can point at. */
public final class Reach {
    private final Site site;
    private final Horizon horizon;

    private Reach(Site site, Horizon horizon) {
        this.site = site;
        this.horizon = horizon;
    }

    public static Reach of(Site site, Rig rig, Horizon horizon) {
        return new Reach(site, horizon);
    }

    /** What keeps the tube from looking there; empty when nothing does. Airless: at the skyline that is half a degree. */
    public Optional<Barrier> barrier(HourAnglePlace place) {
        double sinLat = site.latitude().sin();
        double cosLat = site.latitude().cos();
        double sinDec = place.declination().sin();
        double cosDec = place.declination().cos();
        double cosHa = place.hourAngle().cos();
        Angle altitude = new Angle(Math.asin(Math.max(-1, Math.min(1, sinLat * sinDec + cosLat * cosDec * cosHa))));
        Angle azimuth = new Angle(
                        Math.atan2(-cosDec * place.hourAngle().sin(), cosLat * sinDec - sinLat * cosDec * cosHa))
                .wrappedPositive();
        if (altitude.radians() < 0) {
            return Optional.of(new Barrier.BelowHorizon(altitude));
        }
        Angle skyline = horizon.altitudeAt(azimuth);
        if (altitude.compareTo(skyline) < 0) {
            return Optional.of(new Barrier.BehindSkyline(altitude, skyline));
        }
        return Optional.empty();
    }

    public boolean canReach(HourAnglePlace place) {
        return barrier(place).isEmpty();
    }
}
