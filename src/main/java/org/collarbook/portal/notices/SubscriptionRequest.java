package org.collarbook.portal.notices;

import java.util.EnumSet;
import java.util.List;
import java.util.Objects;

import org.collarbook.platform.Inputs;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/** {@code lead}: either {@code days} or {@code months}; asked for with {@code DUE_SOON}, and only with it. */
@Schema(name = "NewNoticeSubscription", requiredProperties = {"url", "kinds"})
record SubscriptionRequest(@Nullable String url, @Nullable List<@Nullable String> kinds, Lead.@Nullable Asked lead) {

    Subscription.Wanted read(EndpointUrls urls) {
        var wrong = new Inputs();
        var to = urls.read("/url", url, wrong);
        var told = kinds(wrong);
        Lead before = null;
        if (lead != null && !told.contains(NoticeKind.DUE_SOON)) {
            wrong.refuse("/lead", "NOT_ALLOWED", null, "a lead only with the kind DUE_SOON");
        } else if (lead != null) {
            before = lead.read(wrong);
        } else if (told.contains(NoticeKind.DUE_SOON)) {
            wrong.refuse("/lead", "MISSING", null, "either days or months, for the kind DUE_SOON");
        }
        wrong.done();
        return new Subscription.Wanted(Objects.requireNonNull(to).toString(), told, before);
    }

    private EnumSet<NoticeKind> kinds(Inputs wrong) {
        var told = EnumSet.noneOf(NoticeKind.class);
        if (kinds == null || kinds.isEmpty()) {
            wrong.refuse("/kinds", "MISSING", null, "one or more of DUE_SOON, HOLD, MOVED, CONDEMNED");
            return told;
        }
        for (int i = 0; i < kinds.size(); i++) {
            var pointer = "/kinds/" + i;
            var kind = wrong.word(pointer, wrong.required(pointer, kinds.get(i), 40), NoticeKind.class);
            if (kind != null) {
                told.add(kind);
            }
        }
        return told;
    }
}
