package org.collarbook.registry;

import java.util.Collection;
import java.util.List;
import java.util.UUID;

/** Whoever judges fills sees to it that no act about identity allows one that was refused before, unless told to. */
public interface FillSafeguard {

    /** How these were judged before the act. */
    Watch watch(Collection<UUID> containers);

    /** The judgement before, to be compared with the one after. */
    interface Watch {

        /** The codes for which one or the other was refused. */
        List<String> refusedFor();

        /** Refuses by problem where one of these may be filled now and one of those before might not. */
        void refuseAllowed(Collection<UUID> containers);
    }
}
