package org.collarbook.compliance;

import java.time.Instant;
import java.time.ZoneOffset;

import org.collarbook.regulation.RuleBook;
import org.springframework.beans.factory.InitializingBean;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** The rule book this service runs on, stored whole under its hash so that its answers can be explained later. */
@Component
public class LoadedRuleBook implements InitializingBean {

    private final RuleBook rules;
    private final JdbcClient jdbc;
    private int id;

    LoadedRuleBook(RuleBook rules, JdbcClient jdbc) {
        this.rules = rules;
        this.jdbc = jdbc;
    }

    @Override
    public void afterPropertiesSet() {
        jdbc.sql("""
                insert into rule_book (hash, engine_version, content) values (?, ?, ?)
                on conflict on constraint rule_book_hash do nothing""")
                .params(rules.hash(), rules.engineVersion(), rules.canonicalText()).update();
        id = jdbc.sql("select id from rule_book where hash = ? and engine_version = ?")
                .params(rules.hash(), rules.engineVersion()).query(Integer.class).single();
        jdbc.sql("insert into rule_book_load (rule_book_id) values (?)").param(id).update();
    }

    /** The book that answered at a time, with its evaluator; the first that was loaded for a time before. */
    Stored at(Instant time) {
        return jdbc.sql("""
                select hash, engine_version, content from rule_book b join rule_book_load l on l.rule_book_id = b.id
                order by l.loaded_at <= :time desc,
                    case when l.loaded_at <= :time then l.loaded_at end desc nulls last, l.loaded_at limit 1""")
                .param("time", time.atOffset(ZoneOffset.UTC)).query(Stored.class).single();
    }

    record Stored(String hash, String engineVersion, String content) {}

    public int id() {
        return id;
    }
}
