package org.collarbook.platform.web;

import java.util.List;

import org.apache.catalina.connector.ClientAbortException;
import org.apache.tomcat.util.http.InvalidParameterException;
import org.collarbook.platform.Accepted;
import org.collarbook.platform.FieldError;
import org.collarbook.platform.Problem;
import org.collarbook.platform.ProblemException;
import org.collarbook.platform.UnreadableJson;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.dao.OptimisticLockingFailureException;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.HttpStatusCode;
import org.springframework.http.MediaType;
import org.springframework.http.ProblemDetail;
import org.springframework.http.ResponseEntity;
import org.springframework.http.converter.HttpMessageNotReadableException;
import org.springframework.http.converter.HttpMessageNotWritableException;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.security.core.AuthenticationException;
import org.springframework.web.ErrorResponseException;
import org.springframework.security.web.firewall.RequestRejectedException;
import org.springframework.web.bind.MethodArgumentNotValidException;
import org.springframework.web.bind.MissingRequestHeaderException;
import org.springframework.web.bind.MissingServletRequestParameterException;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.RestControllerAdvice;
import org.springframework.web.context.request.WebRequest;
import org.springframework.web.method.annotation.MethodArgumentTypeMismatchException;
import org.springframework.web.multipart.MultipartException;
import org.springframework.web.multipart.support.MissingServletRequestPartException;
import org.springframework.web.servlet.mvc.method.annotation.ResponseEntityExceptionHandler;

import jakarta.servlet.http.HttpServletResponse;

/** Every error leaves as a problem detail (RFC 9457) with a code; none with a stack trace. */
@RestControllerAdvice
class ProblemAdvice extends ResponseEntityExceptionHandler {

    private static final Logger log = LoggerFactory.getLogger(ProblemAdvice.class);

    @ExceptionHandler
    ResponseEntity<Object> refused(ProblemException exception) {
        return answer(exception.problem());
    }

    @ExceptionHandler
    ResponseEntity<Object> mistyped(MethodArgumentTypeMismatchException exception) {
        return answer(Problem.invalid(exception.getName(), "WRONG_TYPE", String.valueOf(exception.getValue()),
                Accepted.of(exception.getRequiredType())));
    }

    @ExceptionHandler
    ResponseEntity<Object> raced(OptimisticLockingFailureException exception) {
        return answer(Problem.of(HttpStatus.PRECONDITION_FAILED, "STALE_VERSION",
                "Somebody else changed this at the same time: read it again and repeat the change."));
    }

    @ExceptionHandler
    ResponseEntity<Object> violated(DataIntegrityViolationException exception) {
        log.warn("A database constraint refused a write", exception);
        return answer(Problem.conflict("CONSTRAINT", "The database refused this: it contradicts what is recorded."
                + " Nothing was stored."));
    }

    @ExceptionHandler({AccessDeniedException.class, AuthenticationException.class})
    void leaveToSecurity(RuntimeException exception) {
        throw exception;
    }

    @ExceptionHandler
    ResponseEntity<Object> unreadable(InvalidParameterException exception) {
        return answer(Problem.invalid("query", "UNREADABLE", null,
                "at most 1,000 parameters, percent-encoded from UTF-8"));
    }

    /** Said of a parameter's name with a control character in it, when it is read: not logged, for the log is lines. */
    @ExceptionHandler
    ResponseEntity<Object> unreadable(RequestRejectedException exception) {
        return answer(Problem.invalid("query", "UNREADABLE", null, "names and values of printable characters"));
    }

    @ExceptionHandler
    ResponseEntity<Object> unreadable(MultipartException exception) {
        var refused = BodyRefused.in(exception);
        return answer(refused != null
                ? refused
                : Problem.invalid("body", "UNREADABLE", null, "a whole multipart/form-data body with its boundary"));
    }

    /** The reader has gone away: nobody is left to answer. */
    @ExceptionHandler
    void gone(ClientAbortException exception) {
        log.debug("A reader went away", exception);
    }

    @ExceptionHandler
    ResponseEntity<Object> unexpected(Exception exception, HttpServletResponse response) throws Exception {
        if (response.isCommitted()) {
            // part of a file is on its way: the server breaks the connection off, so that nobody takes it for whole
            throw exception;
        }
        var busy = Busy.in(exception);
        if (busy.isPresent()) {
            log.warn("A request was given up: {}", busy.get().code(), exception);
            return Busy.answer(busy.get());
        }
        var refused = BodyRefused.in(exception);
        if (refused != null) {
            return answer(refused);
        }
        log.error("A request failed in a way nobody foresaw", exception);
        return answer(Problem.of(HttpStatus.INTERNAL_SERVER_ERROR, "UNEXPECTED",
                "The service failed and stored nothing of this request. The log has the cause."));
    }

    @Override
    protected @Nullable ResponseEntity<Object> handleHttpMessageNotReadable(HttpMessageNotReadableException exception,
            HttpHeaders headers, HttpStatusCode status, WebRequest request) {
        var refused = BodyRefused.in(exception);
        return answer(refused != null
                ? refused
                : Problem.invalid(List.of(UnreadableJson.explain(exception.getCause()))));
    }

    /** Too late: what was asked for is done. */
    @Override
    protected @Nullable ResponseEntity<Object> handleHttpMessageNotWritable(HttpMessageNotWritableException exception,
            HttpHeaders headers, HttpStatusCode status, WebRequest request) {
        log.error("An answer could not be written", exception);
        return answer(Problem.of(HttpStatus.INTERNAL_SERVER_ERROR, "ANSWER_LOST", "The answer could not be written;"
                + " what was asked for may be done. Read it back, or repeat it with the same Idempotency-Key."));
    }

    @Override
    protected @Nullable ResponseEntity<Object> handleMissingServletRequestParameter(
            MissingServletRequestParameterException exception, HttpHeaders headers, HttpStatusCode status,
            WebRequest request) {
        return answer(Problem.invalid(List.of(FieldError.missing(exception.getParameterName(), "a value"))));
    }

    @Override
    protected @Nullable ResponseEntity<Object> handleMethodArgumentNotValid(MethodArgumentNotValidException exception,
            HttpHeaders headers, HttpStatusCode status, WebRequest request) {
        return answer(Problem.invalid(exception.getBindingResult().getFieldErrors().stream()
                .map(wrong -> new FieldError(wrong.getField(), "WRONG_TYPE", String.valueOf(wrong.getRejectedValue()),
                        Accepted.of(exception.getBindingResult().getFieldType(wrong.getField()))))
                .toList()));
    }

    @Override
    protected @Nullable ResponseEntity<Object> handleMissingServletRequestPart(
            MissingServletRequestPartException exception, HttpHeaders headers, HttpStatusCode status,
            WebRequest request) {
        return answer(Problem.invalid(List.of(FieldError.missing(exception.getRequestPartName(), "a part"))));
    }

    @Override
    protected @Nullable ResponseEntity<Object> handleExceptionInternal(Exception exception, @Nullable Object body,
            HttpHeaders headers, HttpStatusCode status, WebRequest request) {
        if (exception instanceof MissingRequestHeaderException missing) {
            return answer(Problem.invalid(List.of(FieldError.missing(missing.getHeaderName(), "a header"))));
        }
        var known = HttpStatus.valueOf(status.value());
        var detail = exception instanceof ErrorResponseException || !(body instanceof ProblemDetail plain)
                || plain.getDetail() == null ? known.getReasonPhrase() + "." : plain.getDetail();
        var answer = answer(Problem.of(known, known.name(), detail));
        return ResponseEntity.status(status).headers(headers).contentType(MediaType.APPLICATION_PROBLEM_JSON)
                .body(answer.getBody());
    }

    private static ResponseEntity<Object> answer(Problem problem) {
        return problem.status() == HttpStatus.SERVICE_UNAVAILABLE
                ? Busy.answer(problem)
                : ResponseEntity.status(problem.status()).contentType(MediaType.APPLICATION_PROBLEM_JSON)
                        .body(problem.body());
    }
}
