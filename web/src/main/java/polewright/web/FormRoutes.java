package polewright.web;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import polewright.web.form.CommandForm;
import polewright.web.form.CommandForms;
import polewright.web.page.Forms;
import polewright.web.page.PageRequest;
import polewright.web.page.Pages;
import polewright.web.session.NightSession;
import polewright.web.session.PracticeAddress;
import polewright.web.session.SubmissionOutcome;
import polewright.web.session.WatchedFrames;
import polewright.web.view.FormView;
import polewright.web.view.Section;

/** Routes to which a session's forms are posted; each form is run as the command it represents. */
final class FormRoutes {
    private final NightSession session;
    private final List<NightSession> all;

    private FormRoutes(NightSession session, List<NightSession> all) {
        this.session = session;
        this.all = all;
    }

    /** @param all every session of this server: a submission in one may bring a frame in another */
    static void add(JavalinConfig config, NightSession session, List<NightSession> all) {
        FormRoutes routes = new FormRoutes(session, all);
        for (CommandForm form : CommandForms.all()) {
            config.routes.post(session.prefix() + "/do/" + form.id(), ctx -> routes.post(ctx, form));
        }
    }

    /** Forms of the practice and of the laptop itself, which exist only once. */
    static void addGlobal(JavalinConfig config, NightSession session, List<NightSession> all) {
        FormRoutes routes = new FormRoutes(session, all);
        Stream.concat(CommandForms.practice().stream(), CommandForms.laptop().stream())
                .forEach(form -> config.routes.post("/do/" + form.id(), ctx -> routes.post(ctx, form)));
    }

    private void post(Context ctx, CommandForm form) {
        Map<String, String> filled = Responses.filled(ctx);
        SubmissionOutcome posted = FormSubmission.of(session, form, filled);
        // A frame may arrive right after the action and must be recognised as having come after it.
        all.forEach(each -> each.frames().ifPresent(WatchedFrames::refresh));
        if (posted instanceof SubmissionOutcome.Logged logged) {
            session.keepNotes(logged);
            String next = switch (form.kind()) {
                case NIGHT -> session.prefix() + "/?said=" + logged.seq();
                case PRACTICE -> PracticeAddress.GAME;
                case DEVICES -> Pages.DEVICES;
            };
            ctx.redirect(next, HttpStatus.SEE_OTHER);
        } else if (posted instanceof SubmissionOutcome.Refused refused) {
            ctx.status(HttpStatus.UNPROCESSABLE_CONTENT);
            again(ctx, form, filled, refused.complaints());
        } else if (posted instanceof SubmissionOutcome.ToBeConfirmed doubtful) {
            ctx.status(HttpStatus.UNPROCESSABLE_CONTENT);
            Map<String, String> request = new HashMap<>(filled);
            request.put(FormView.ASKS, "yes");
            again(ctx, form, request, doubtful.complaints());
        } else if (posted instanceof SubmissionOutcome.NotNow notNow) {
            Responses.refuse(
                    ctx,
                    session,
                    HttpStatus.SERVICE_UNAVAILABLE,
                    "Not logged yet",
                    String.join(" ", notNow.complaints()));
        } else if (posted instanceof SubmissionOutcome.Outdated outdated) {
            ctx.status(HttpStatus.CONFLICT);
            if (FormSubmission.confirmsAdvice(filled)) {
                Responses.show(ctx, Responses.request(ctx, session), Pages.now(), outdated.complaints());
            } else {
                // An event number from another night means nothing in this one.
                Map<String, String> kept = new HashMap<>(filled);
                kept.remove("seq");
                again(ctx, form, kept, outdated.complaints());
            }
        }
    }

    private void again(Context ctx, CommandForm form, Map<String, String> filled, List<String> complaints) {
        PageRequest request = Responses.request(ctx, session);
        Responses.show(
                ctx,
                request,
                Pages.of(form),
                complaints,
                List.of(new Section.Entry(Forms.fresh(request, form, filled))));
    }
}
