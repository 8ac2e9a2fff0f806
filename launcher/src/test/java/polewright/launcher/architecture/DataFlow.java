package polewright.launcher.architecture;

import java.lang.reflect.Method;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import polewright.alignment.advice.Advice;
import polewright.alignment.advice.Adviser;
import polewright.alignment.allowance.Allowance;
import polewright.alignment.allowance.ZoneFinder;
import polewright.alignment.fix.Fix;
import polewright.alignment.fix.FixSolver;
import polewright.alignment.sighting.Sighting;
import polewright.alignment.work.Work;
import polewright.mount.rig.Rig;
import polewright.operations.action.Action;
import polewright.operations.action.Effect;
import polewright.report.text.AdviceWords;
import polewright.session.event.NightEvent;
import polewright.sky.place.Site;
import polewright.store.NightLog;

/** The data flow from an entry to a report: values, and the methods that compute one from another. */
final class DataFlow {
    /**
     * A value that flows, or the package where it leaves the core.
     *
     * @param name what the documents call it
     * @param type its type; empty for a package
     * @param code the type, method or package as it is written in the picture
     */
    record Node(String name, Optional<Class<?>> type, String code) {
        static Node of(String name, Class<?> type) {
            return new Node(name, Optional.of(type), type.getSimpleName());
        }

        /** A value that this method computes. */
        static Node by(String name, Class<?> type, String method) {
            return new Node(name, Optional.of(type), method);
        }

        static Node in(String name, String module) {
            return new Node(name, Optional.empty(), module);
        }

        /** For a package: its name in full. */
        String packageName() {
            return "polewright." + code;
        }
    }

    /**
     * One value becomes another.
     *
     * @param by the methods that do it, one after the other; empty if a package does it by using a type
     */
    record Arrow(Node from, Node to, List<Maker> by) {
        Arrow {
            by = List.copyOf(by);
        }
    }

    /** A method that computes one value from another. */
    record Maker(Class<?> owner, String method) {
        Stream<Method> methods() {
            return Arrays.stream(owner.getDeclaredMethods())
                    .filter(declared -> declared.getName().equals(method));
        }
    }

    static final Node TERMINAL = Node.in("terminal", "cli");
    static final Node PAGES = Node.in("pages", "web");
    static final Node ACTION = Node.of("action", Action.class);
    static final Node EVENT = Node.of("event", NightEvent.class);
    static final Node LOG = Node.of("log", NightLog.class);
    static final Node SIGHTING = Node.of("sighting", Sighting.class);
    static final Node SITE = Node.of("site", Site.class);
    static final Node RIG = Node.of("rig", Rig.class);
    static final Node WORK = Node.of("work", Work.class);
    static final Node FIX = Node.by("fix", Fix.class, "FixSolver.solve");
    static final Node ALLOWANCE = Node.by("allowance", Allowance.class, "ZoneFinder.find");
    static final Node ADVICE = Node.by("advice", Advice.class, "Adviser.advise");
    static final Node REPORT = Node.in("report", "report");

    private static final Maker LOGGED = new Maker(NightLog.class, "events");
    private static final Maker SOLVED = new Maker(FixSolver.class, "solve");
    private static final Maker FOUND = new Maker(ZoneFinder.class, "find");
    private static final Maker ADVISED = new Maker(Adviser.class, "advise");

    /** From the entry to the advice. */
    static final List<Arrow> ARROWS = List.of(
            new Arrow(TERMINAL, ACTION, List.of()),
            new Arrow(PAGES, ACTION, List.of()),
            new Arrow(ACTION, EVENT, List.of(new Maker(Effect.Entering.class, "events"))),
            new Arrow(EVENT, LOG, List.of(new Maker(NightLog.class, "append"))),
            new Arrow(LOG, SIGHTING, List.of(LOGGED, new Maker(NightEvent.class, "asSighting"))),
            new Arrow(LOG, SITE, List.of(LOGGED, new Maker(NightEvent.Begun.class, "site"))),
            new Arrow(LOG, RIG, List.of(LOGGED, new Maker(NightEvent.Begun.class, "rig"))),
            new Arrow(LOG, WORK, List.of(LOGGED, new Maker(NightEvent.WorkSet.class, "work"))),
            new Arrow(SIGHTING, FIX, List.of(SOLVED)),
            new Arrow(SITE, FIX, List.of(SOLVED)),
            new Arrow(RIG, FIX, List.of(SOLVED)),
            new Arrow(SITE, ALLOWANCE, List.of(FOUND)),
            new Arrow(RIG, ALLOWANCE, List.of(FOUND)),
            new Arrow(WORK, ALLOWANCE, List.of(FOUND)),
            new Arrow(FIX, ADVICE, List.of(ADVISED)),
            new Arrow(ALLOWANCE, ADVICE, List.of(ADVISED)),
            new Arrow(ADVICE, REPORT, List.of(new Maker(AdviceWords.class, "of"))),
            new Arrow(REPORT, TERMINAL, List.of()),
            new Arrow(REPORT, PAGES, List.of()));

    private DataFlow() {}

    /** Whether the methods of an arrow exist, and lead from its first value to its second. */
    static boolean leads(Arrow arrow) {
        List<Maker> makers = arrow.by();
        for (int i = 0; i < makers.size(); i++) {
            Maker maker = makers.get(i);
            Optional<Maker> next = i + 1 < makers.size() ? Optional.of(makers.get(i + 1)) : Optional.empty();
            boolean isFirst = i == 0;
            if (maker.methods()
                    .noneMatch(
                            method -> (!isFirst || takes(method, arrow.from())) && gives(method, arrow.to(), next))) {
                return false;
            }
        }
        return true;
    }

    private static boolean takes(Method method, Node from) {
        Class<?> type = from.type().orElseThrow();
        return mentions(type, method.getDeclaringClass())
                || Arrays.stream(method.getGenericParameterTypes()).anyMatch(taken -> mentions(taken, type));
    }

    private static boolean gives(Method method, Node to, Optional<Maker> next) {
        Type given = method.getGenericReturnType();
        if (next.isPresent()) {
            return mentions(given, next.get().owner());
        }
        // A log entry and a report are not return values.
        return to.type()
                .map(type -> method.getDeclaringClass().equals(type) || mentions(given, type))
                .orElseGet(() -> method.getDeclaringClass().getPackageName().startsWith(to.packageName()));
    }

    /** Whether a value of a type is one of another, or has one. */
    private static boolean mentions(Type type, Class<?> other) {
        if (type instanceof ParameterizedType generic) {
            return Arrays.stream(generic.getActualTypeArguments()).anyMatch(part -> mentions(part, other));
        }
        if (!(type instanceof Class<?> known) || known.isPrimitive()) {
            return false;
        }
        return isOneOf(known, other) || parts(known).anyMatch(part -> isOneOf(part, other));
    }

    private static boolean isOneOf(Class<?> type, Class<?> other) {
        return other.isAssignableFrom(type)
                || (type.isAssignableFrom(other) && type.getName().startsWith("polewright"));
    }

    /** The components of a record, or of the records that a sealed type permits. */
    private static Stream<Class<?>> parts(Class<?> type) {
        if (type.isRecord()) {
            return Arrays.stream(type.getRecordComponents()).map(RecordComponent::getType);
        }
        return type.isSealed() ? Arrays.stream(type.getPermittedSubclasses()).flatMap(DataFlow::parts) : Stream.of();
    }
}
