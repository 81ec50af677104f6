<#-- One line a library: licence, name, coordinates; in a fixed order. -->
Libraries in this program and their licences. Texts and notices: META-INF/LICENSE, META-INF/NOTICE, META-INF/licenses.

<#list dependencyMap?sort_by(["key", "id"]) as e>
<#assign p = e.getKey()>
${e.getValue()?join(", ")}: ${p.groupId}:${p.artifactId}:${p.version}
</#list>
