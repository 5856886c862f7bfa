package org.collarbook.intake;

import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Collectors;

import com.sun.management.GarbageCollectionNotificationInfo;

import javax.management.NotificationEmitter;
import javax.management.openmbean.CompositeData;

/** The most heap that was in use after any collection from its making on: what was needed, without the garbage. */
final class LiveHeap {

    private final AtomicLong most = new AtomicLong();

    LiveHeap() {
        var heap = ManagementFactory.getMemoryPoolMXBeans().stream().filter(pool -> pool.getType() == MemoryType.HEAP)
                .map(MemoryPoolMXBean::getName).collect(Collectors.toSet());
        for (var collector : ManagementFactory.getGarbageCollectorMXBeans()) {
            if (collector instanceof NotificationEmitter emitter) {
                emitter.addNotificationListener((notification, handback) -> {
                    var info = GarbageCollectionNotificationInfo.from((CompositeData) notification.getUserData());
                    long used = info.getGcInfo().getMemoryUsageAfterGc().entrySet().stream()
                            .filter(pool -> heap.contains(pool.getKey())).mapToLong(pool -> pool.getValue().getUsed())
                            .sum();
                    most.accumulateAndGet(used, Math::max);
                }, notification -> notification.getType()
                        .equals(GarbageCollectionNotificationInfo.GARBAGE_COLLECTION_NOTIFICATION), null);
            }
        }
    }

    /** In bytes; it includes what a young collection left over of older garbage. */
    long most() {
        return most.get();
    }
}
