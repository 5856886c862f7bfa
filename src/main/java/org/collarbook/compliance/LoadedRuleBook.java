package org.collarbook.compliance;

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
    }

    public int id() {
        return id;
    }
}
