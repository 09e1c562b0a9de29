package org.boardtopit.measures;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.phases.Phase;
import org.boardtopit.phases.PhaseName;

/** Every name that {@link EvidenceTable} can hold a number of a triple jump under; a drill's parts are numbered as they come. */
public final class EvidenceNames {
    private static final List<PhaseName> PHASES_OF_A_JUMP =
            List.of(PhaseName.APPROACH, PhaseName.HOP, PhaseName.STEP, PhaseName.JUMP, PhaseName.LANDING);

    private EvidenceNames() {}

    /** Measures by part, both in the order of the tables. */
    public static Map<String, Set<String>> byPart() {
        Map<String, Set<String>> names = new LinkedHashMap<>();
        names.put(Evidence.ATTEMPT, attempt());
        for (PhaseName phase : PHASES_OF_A_JUMP) {
            names.put(phase.label(), phase());
        }
        for (ContactKind kind :
                List.of(ContactKind.BOARD, ContactKind.HOP_LANDING, ContactKind.STEP_LANDING, ContactKind.PIT)) {
            names.put(kind.label(), contact());
        }
        return Collections.unmodifiableMap(names);
    }

    private static Set<String> attempt() {
        Set<String> names = new LinkedHashSet<>(List.of("lead_pct", "approach_speed_ms"));
        for (AttemptQuantity quantity : AttemptQuantity.values()) {
            names.add(quantity.column());
        }
        return names;
    }

    private static Set<String> phase() {
        return PhaseMeasures.spanOnly(new Phase(PhaseName.HOP, 0, 0)).byColumn().keySet();
    }

    private static Set<String> contact() {
        Set<String> names = new LinkedHashSet<>(List.of("support_time_s"));
        for (BodyAngle angle : BodyAngle.values()) {
            names.add(angle.column("touchdown"));
            names.add(angle.column("toe_off"));
        }
        for (ContactQuantity quantity : ContactQuantity.values()) {
            names.add(quantity.column());
        }
        return names;
    }
}
