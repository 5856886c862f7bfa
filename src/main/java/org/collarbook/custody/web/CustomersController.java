package org.collarbook.custody.web;

import java.net.URI;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.custody.NamedCustomer;
import org.collarbook.custody.Places;
import org.collarbook.platform.Cursor;
import org.collarbook.platform.Idempotency;
import org.collarbook.platform.Page;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.Problem;
import org.collarbook.platform.Revision;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.tags.Tag;

@RestController
@RequestMapping(path = "/api/customers", produces = "application/json")
@Tag(name = "Places")
class CustomersController {

    private final Places places;
    private final Idempotency idempotency;

    CustomersController(Places places, Idempotency idempotency) {
        this.places = places;
        this.idempotency = idempotency;
    }

    @ResponseStatus(HttpStatus.CREATED)
    @PostMapping
    @Operation(summary = "Open a customer")
    ResponseEntity<?> open(@RequestBody CustomerRequest request,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key, Caller caller) {
        var content = request.toContent();
        return idempotency.once(key, caller.id(), "POST /api/customers", request, () -> {
            var customer = places.openCustomer(content.code(), content.name());
            return answer(ResponseEntity.created(URI.create("/api/customers/" + customer.id())), customer);
        });
    }

    @GetMapping("/{id}")
    @Operation(summary = "One customer")
    ResponseEntity<CustomerResponse> one(@PathVariable UUID id) {
        return answer(ResponseEntity.ok(),
                places.customer(id).orElseThrow(() -> Problem.notFound("customer").asException()));
    }

    @GetMapping
    @Operation(summary = "Customers, by pages")
    Page<CustomerResponse> list(@RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable Integer size) {
        return places.customers(Cursor.parseId(cursor), PageSize.of(size))
                .map(rows -> rows.stream().map(CustomerResponse::from).toList());
    }

    @PutMapping("/{id}")
    @Operation(summary = "Change a customer's code or name")
    ResponseEntity<CustomerResponse> change(@PathVariable UUID id,
            @Parameter(required = true) @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch,
            @RequestBody CustomerRequest request) {
        var content = request.toContent();
        return answer(ResponseEntity.ok(), places.changeCustomer(id, ifMatch, content.code(), content.name()));
    }

    private static ResponseEntity<CustomerResponse> answer(ResponseEntity.BodyBuilder to, NamedCustomer customer) {
        return to.eTag(new Revision(customer.version()).etag()).body(CustomerResponse.from(customer));
    }
}
