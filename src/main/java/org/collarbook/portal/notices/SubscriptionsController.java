package org.collarbook.portal.notices;

import java.net.URI;
import java.time.Duration;
import java.util.List;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.access.CustomerId;
import org.collarbook.access.CustomerScope;
import org.collarbook.platform.Problem;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;

@RestController
@RequestMapping(path = "/api", produces = "application/json")
@Tag(name = "Notices")
class SubscriptionsController {

    private static final int USUAL_OVERLAP = 24;
    private static final int LONGEST_OVERLAP = 168;

    private final Subscriptions subscriptions;
    private final EndpointUrls urls;

    SubscriptionsController(Subscriptions subscriptions, EndpointUrls urls) {
        this.subscriptions = subscriptions;
        this.urls = urls;
    }

    @Schema(name = "NoticeSubscriptionList")
    record SubscriptionList(List<Subscription> items) {}

    /** {@code overlapHours}: how long the secret of before signs beside the new one; 24 when absent, 0 for not at all. */
    @Schema(name = "SecretRotation")
    record Rotation(@Nullable Integer overlapHours) {

        Duration read() {
            int hours = overlapHours == null ? USUAL_OVERLAP : overlapHours;
            if (hours < 0 || hours > LONGEST_OVERLAP) {
                throw Problem.invalid("/overlapHours", "OUT_OF_RANGE", String.valueOf(hours), "0 to " + LONGEST_OVERLAP)
                        .asException();
            }
            return Duration.ofHours(hours);
        }
    }

    @ResponseStatus(HttpStatus.CREATED)
    @PostMapping("/customers/{id}/notice-subscriptions")
    @Operation(summary = "Have a customer's endpoint told of changes; its secret is shown in this answer only", description = """
            Made by an administrator, or by the customer's own portal key. What changes from then on is told. As with keys \
            no Idempotency-Key is taken, since the first answer is not kept.""")
    ResponseEntity<Subscription.Made> make(@PathVariable UUID id, @RequestBody SubscriptionRequest request,
            Caller caller) {
        var made = subscriptions.make(new CustomerId(id), request.read(urls), caller);
        return ResponseEntity.created(URI.create("/api/notice-subscriptions/" + made.subscription().id())).body(made);
    }

    @GetMapping("/customers/{id}/notice-subscriptions")
    @Operation(summary = "A customer's subscriptions, without their secrets")
    SubscriptionList list(@PathVariable UUID id, CustomerScope scope) {
        return new SubscriptionList(subscriptions.of(new CustomerId(id), scope));
    }

    @GetMapping("/notice-subscriptions/{id}")
    @Operation(summary = "One subscription, and how many notices wait")
    Subscription read(@PathVariable UUID id, CustomerScope scope) {
        return subscriptions.require(id, scope);
    }

    @ResponseStatus(HttpStatus.NO_CONTENT)
    @DeleteMapping("/notice-subscriptions/{id}")
    @Operation(summary = "End a subscription; what waits is not sent")
    ResponseEntity<Void> end(@PathVariable UUID id, CustomerScope scope) {
        subscriptions.end(id, scope);
        return ResponseEntity.noContent().build();
    }

    @PostMapping("/notice-subscriptions/{id}/secret-rotation")
    @Operation(summary = "Make another secret, shown in this answer only", description = """
            Both sign until the overlap is over; of two that overlap already, the older ends at once. No Idempotency-Key \
            is taken, since the answer is not kept.""")
    Subscription.Made rotate(@PathVariable UUID id, @RequestBody Rotation request, CustomerScope scope) {
        return subscriptions.rotate(id, request.read(), scope);
    }

    @PostMapping("/notice-subscriptions/{id}/pause")
    @Operation(summary = "Send nothing until it is resumed; notices are kept for thirty days")
    Subscription pause(@PathVariable UUID id, CustomerScope scope) {
        return subscriptions.pause(id, scope);
    }

    @PostMapping("/notice-subscriptions/{id}/resumption")
    @Operation(summary = "Send again what waits and what comes; also after the endpoint answered 410")
    Subscription resume(@PathVariable UUID id, CustomerScope scope) {
        return subscriptions.resume(id, scope);
    }
}
