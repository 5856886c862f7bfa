package org.collarbook.compliance;

import java.util.List;
import java.util.UUID;

/**
 * What is stored of these containers was assessed anew, whether or not it is another now; published in the transaction
 * that did it, once for a batch. Of a record that is closed nothing is stored any more.
 */
public record ContainersAssessed(List<UUID> containerIds) {

    public ContainersAssessed {
        containerIds = List.copyOf(containerIds);
    }
}
