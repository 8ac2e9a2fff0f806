package polewright.session.jsonl;

import java.util.Optional;
import polewright.session.event.Skip;
import polewright.sky.body.SkyBody;
import polewright.sky.fields.BodyFields;
import polewright.sky.fields.BodyNames;
import polewright.sky.fields.FieldReader;
import polewright.sky.fields.FieldWriter;

/** A sighting that cannot be taken. */
final class SkipJson {
    private SkipJson() {}

    static void write(FieldWriter out, Skip skip) {
        out.word("sighting", skip.sighting()).word("because", skip.because());
        skip.star().ifPresent(star -> BodyFields.write(out, star));
        skip.optic().ifPresent(optic -> out.text("optic", optic));
    }

    static Skip read(FieldReader in, BodyNames names) {
        Skip.Sighting sighting = in.choice("sighting", Skip.Sighting.class);
        Skip.Reason because = in.choice("because", Skip.Reason.class);
        Optional<SkyBody> star =
                in.has("star") || in.has("body") ? Optional.of(BodyFields.read(in, names)) : Optional.empty();
        Optional<String> optic = in.has("optic") ? Optional.of(in.text("optic")) : Optional.empty();
        return in.made(() -> new Skip(sighting, because, star, optic));
    }
}
