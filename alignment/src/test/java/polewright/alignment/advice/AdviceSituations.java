package polewright.alignment.advice;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import polewright.alignment.allowance.DiscAllowance;
import polewright.alignment.fix.Fix;
import polewright.alignment.fix.FixSolver;
import polewright.alignment.fix.KnownAxis;
import polewright.alignment.fix.Step;
import polewright.alignment.fix.ToldRig;
import polewright.alignment.sighting.CompassBearing;
import polewright.alignment.sighting.LevelledScale;
import polewright.alignment.sighting.Sighting;
import polewright.mount.AxisOffset;
import polewright.mount.rig.Rig;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/** Situations to advise on: a known axis, sighted without error. */
final class AdviceSituations {
    static final Rig RIG = ToldRig.typical();
    static final Set<SightingKind> GROUND_READ = Set.of(SightingKind.COMPASS, SightingKind.LEVEL_AND_SCALE);
    static final Angle SHARP = Angle.ofArcseconds(2);

    private AdviceSituations() {}

    static KnownAxis axis(double latitudeDeg, double eastArcmin, double upArcmin) {
        return KnownAxis.exactly(Site.ofDegrees(latitudeDeg, 0, 200), AxisOffset.ofArcminutes(eastArcmin, upArcmin));
    }

    static Fix fix(KnownAxis known, Sighting... sightings) {
        List<Step> steps = new ArrayList<>();
        for (Sighting sighting : sightings) {
            steps.add(known.step(steps.size() + 2L, sighting));
        }
        return FixSolver.solve(known.site(), RIG, KnownAxis.AIR, steps);
    }

    static Situation unclamped(Fix fix, boolean compassRead, boolean scaleRead) {
        Set<SightingKind> read = EnumSet.noneOf(SightingKind.class);
        if (compassRead) {
            read.add(SightingKind.COMPASS);
        }
        if (scaleRead) {
            read.add(SightingKind.LEVEL_AND_SCALE);
        }
        return new Situation(RIG, fix, DiscAllowance.VISUAL, false, Confirmation.NONE, read, Daylight.NONE);
    }

    static Situation clamped(Fix fix, Confirmation sinceClamp) {
        return new Situation(RIG, fix, DiscAllowance.VISUAL, true, sinceClamp, GROUND_READ, Daylight.NONE);
    }

    static Fix sharp(KnownAxis known) {
        return fix(
                known,
                known.compass(CompassBearing.USUAL_SIGMA),
                known.scale(LevelledScale.USUAL_SIGMA),
                known.driftOnMeridian(15, SHARP),
                known.driftInEast(15, SHARP));
    }
}
